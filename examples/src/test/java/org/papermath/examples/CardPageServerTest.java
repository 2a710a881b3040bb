package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The page with its form over HTTP, as a browser asks for it. */
class CardPageServerTest {
    private static final String TYPE = "application/x-www-form-urlencoded";

    private static CardPageServer server;
    private static HttpClient client;

    @BeforeAll
    static void start() throws IOException {
        server = CardPageServer.start(0);
        client = HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(10)).build();
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    private static Map<String, String> order() {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("order", "harbour cards");
        fields.put("due", "2027-03-01");
        fields.put("piece", "card");
        fields.put("count", "40");
        fields.put("size", "105 mm × 148 mm");
        fields.put("grammage", "220 g/m2");
        fields.put("fibre", "cotton rag");
        fields.put("beating", "3 h");
        fields.put("envelope", "diamond");
        return fields;
    }

    private static HttpResponse<String> sent(Map<String, String> fields) throws Exception {
        String body = fields.entrySet().stream()
                .map(one -> one.getKey() + "=" + URLEncoder.encode(one.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return answer(request("card").header("Content-Type", TYPE).POST(HttpRequest.BodyPublishers.ofString(body)));
    }

    private static HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create(server.address() + path)).timeout(Duration.ofSeconds(60));
    }

    private static HttpResponse<String> answer(HttpRequest.Builder request) throws Exception {
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
    }

    @Test
    void theFormHasALabelForEveryField() throws Exception {
        HttpResponse<String> page = answer(request(""));
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.headers().firstValue("Content-Type")).contains("text/html; charset=utf-8");
        assertThat(page.headers().firstValue("Content-Security-Policy").orElseThrow())
                .contains("default-src 'none'", "form-action 'self'");
        for (String field : order().keySet()) {
            assertThat(page.body()).contains("<label for=\"" + field + "\">", " id=\"" + field + "\" name=\"" + field);
        }
        assertThat(page.body()).doesNotContain("<script", "class=\"fault\"");
    }

    @Test
    void theFormAsItStandsIsAnOrderThatCanBePlanned() {
        assertThat(OrderForm.empty().card().orElseThrow()).contains("winter cards");
    }

    @Test
    void anOrderComesBackAsItsCard() throws Exception {
        HttpResponse<String> card = sent(order());
        assertThat(card.statusCode()).as(card.body()).isEqualTo(200);
        assertThat(card.body())
                .isEqualTo(OrderForm.of(order()).card().orElseThrow())
                .contains("harbour cards", "card envelope");
    }

    @Test
    void everyFaultStandsBesideItsField() throws Exception {
        Map<String, String> wrong = order();
        wrong.put("count", "many");
        wrong.put("grammage", "220");
        wrong.put("size", "ISO A66");
        wrong.put("beating", "-1 h");
        wrong.put("fibre", "coton rag");
        wrong.put("due", "soon");
        HttpResponse<String> page = sent(wrong);
        assertThat(page.statusCode()).isEqualTo(422);
        for (String field : new String[] {"count", "grammage", "size", "beating", "fibre", "due"}) {
            assertThat(page.body())
                    .contains("<div id=\"" + field + "-fault\">", "aria-describedby=\"" + field + "-fault\"");
        }
        assertThat(page.body()).contains("value=\"many\"", "value=\"ISO A66\"");
        assertThat(page.body().split("aria-invalid=", -1)).hasSize(7);
    }

    @Test
    void whatCannotBePlannedStandsAboveTheForm() throws Exception {
        Map<String, String> large = order();
        large.put("envelope", "");
        large.put("grammage", "");
        HttpResponse<String> page = sent(large);
        assertThat(page.statusCode()).isEqualTo(422);
        assertThat(page.body()).contains("class=\"fault\"");
    }

    @Test
    void whatIsTypedIsShownAsText() throws Exception {
        Map<String, String> typed = order();
        typed.put("order", "<script>alert(1)</script>\"");
        typed.put("count", "<b>");
        HttpResponse<String> page = sent(typed);
        assertThat(page.body())
                .contains("&lt;script&gt;alert(1)&lt;/script&gt;&quot;")
                .doesNotContain("<script>", "<b>");
        typed.put("count", "40");
        assertThat(sent(typed).body()).doesNotContain("<script>alert(1)");
    }

    @Test
    void aFormThatIsTooLongIsNotRead() throws Exception {
        Map<String, String> much = order();
        much.put("order", "a".repeat(20_000));
        assertThat(sent(much).statusCode()).isEqualTo(413);
        assertThat(answer(request("card").POST(HttpRequest.BodyPublishers.ofString("{}")))
                        .statusCode())
                .isEqualTo(415);
        assertThat(answer(request("card")
                                .header("Content-Type", TYPE)
                                .POST(HttpRequest.BodyPublishers.ofString("order=%zz")))
                        .statusCode())
                .isEqualTo(400);
    }

    @Test
    void otherPlacesAndOtherWaysAreRefused() throws Exception {
        assertThat(answer(request("other")).statusCode()).isEqualTo(404);
        assertThat(answer(request("card")).statusCode()).isEqualTo(405);
        assertThat(answer(request("").DELETE()).headers().firstValue("Allow")).contains("GET, HEAD");
        assertThat(answer(request("").method("HEAD", HttpRequest.BodyPublishers.noBody()))
                        .body())
                .isEmpty();
    }

    @Test
    void otherHostsAndFormsOfOtherPagesAreRefused() throws Exception {
        int port = URI.create(server.address()).getPort();
        assertThat(raw("GET / HTTP/1.1\r\nHost: localhost:" + port + "\r\nConnection: close\r\n\r\n"))
                .startsWith("HTTP/1.1 200");
        assertThat(raw("GET / HTTP/1.1\r\nHost: paper.example:" + port + "\r\nConnection: close\r\n\r\n"))
                .startsWith("HTTP/1.1 421");
        assertThat(raw("GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n"))
                .startsWith("HTTP/1.1 421");
        assertThat(raw("POST /card HTTP/1.1\r\nHost: 127.0.0.1:" + port + "\r\nOrigin: http://paper.example\r\n"
                        + "Content-Type: " + TYPE + "\r\nContent-Length: 0\r\nConnection: close\r\n\r\n"))
                .startsWith("HTTP/1.1 403");
    }

    private static String raw(String request) throws IOException {
        int port = URI.create(server.address()).getPort();
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            OutputStream out = socket.getOutputStream();
            out.write(request.getBytes(StandardCharsets.US_ASCII));
            out.flush();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
