package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.WebSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** The page with its form in a real browser, as wide as a phone: filled in, sent, mended and printed. */
@Tag("browser")
class CardPageBrowserTest {
    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final int PHONE = 360;
    private static final long SECONDS = 30;

    @TempDir
    Path folder;

    private final BlockingQueue<JsonNode> answers = new LinkedBlockingQueue<>();
    private CardPageServer server;
    private Process browser;
    private WebSocket socket;
    private int asked;

    @BeforeEach
    void open() throws Exception {
        server = CardPageServer.start(0);
        Path profile = folder.resolve("profile");
        browser = new ProcessBuilder(
                        browser(),
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--remote-debugging-port=0",
                        "--user-data-dir=" + profile,
                        "about:blank")
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("log").toFile())
                .start();
        Path told = profile.resolve("DevToolsActivePort");
        await(() -> Files.exists(told) && told.toFile().length() > 0);
        HttpClient client = HttpClient.newHttpClient();
        String pages = "http://127.0.0.1:" + Files.readAllLines(told).get(0) + "/json";
        String[] page = {""};
        await(() -> {
            for (JsonNode one : JSON.readTree(get(client, pages))) {
                if (one.path("type").asString().equals("page")) {
                    page[0] = one.path("webSocketDebuggerUrl").asString();
                }
            }
            return !page[0].isEmpty();
        });
        socket = client.newWebSocketBuilder()
                .buildAsync(URI.create(page[0]), new Listener())
                .get(SECONDS, TimeUnit.SECONDS);
    }

    @AfterEach
    void close() throws InterruptedException {
        if (socket != null) {
            socket.abort();
        }
        if (browser != null) {
            browser.destroy();
            if (!browser.waitFor(SECONDS, TimeUnit.SECONDS)) {
                browser.destroyForcibly();
            }
        }
        server.close();
    }

    @Test
    void anOrderIsTypedSentMendedAndPrinted() throws Exception {
        ask(
                "Emulation.setDeviceMetricsOverride",
                params -> params.put("width", PHONE)
                        .put("height", 740)
                        .put("deviceScaleFactor", 1)
                        .put("mobile", true));
        ask("Page.navigate", params -> params.put("url", server.address()));
        await(() -> value("document.title").equals("An order for paper"));
        assertThat(value("document.documentElement.scrollWidth <= " + PHONE)).isEqualTo("true");
        assertThat(value("document.querySelectorAll('input:not([id]), select:not([id])').length"))
                .isEqualTo("0");

        value("document.getElementById('order').value = 'harbour <cards>'");
        value("document.getElementById('count').value = 'many'");
        value("document.querySelector('button').click()");
        await(() -> value("!!document.getElementById('count-fault')").equals("true"));
        assertThat(value("document.getElementById('order').value")).isEqualTo("harbour <cards>");
        assertThat(value("document.querySelectorAll('[aria-invalid]').length")).isEqualTo("1");
        assertThat(value("document.getElementById('count').getAttribute('aria-describedby')"))
                .isEqualTo("count-fault");
        assertThat(value("document.documentElement.scrollWidth <= " + PHONE)).isEqualTo("true");

        value("document.getElementById('count').value = '40'");
        value("document.querySelector('button').click()");
        await(() -> value("document.body.innerText.includes('harbour <cards>')").equals("true")
                && value("document.forms.length").equals("0"));
        byte[] pdf = Base64.getDecoder()
                .decode(ask("Page.printToPDF", params -> params.put("preferCSSPageSize", true))
                        .path("data")
                        .asString());
        assertThat(new String(pdf, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
    }

    /** What an expression gives on the page, as text. */
    private String value(String expression) {
        return ask("Runtime.evaluate", params -> params.put("expression", "String(" + expression + ")"))
                .path("result")
                .path("value")
                .asString();
    }

    private JsonNode ask(String method, Consumer<ObjectNode> filling) {
        try {
            int id = ++asked;
            ObjectNode message = JSON.createObjectNode().put("id", id).put("method", method);
            filling.accept(message.putObject("params"));
            socket.sendText(JSON.writeValueAsString(message), true).get(SECONDS, TimeUnit.SECONDS);
            while (true) {
                JsonNode answer = answers.poll(SECONDS, TimeUnit.SECONDS);
                assertThat(answer).as("an answer to " + method).isNotNull();
                if (answer.path("id").asInt(0) == id) {
                    return answer.path("result");
                }
            }
        } catch (Exception e) {
            throw new AssertionError(method, e);
        }
    }

    private static void await(BooleanSupplier come) throws InterruptedException {
        long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS);
        while (!come.getAsBoolean()) {
            assertThat(System.nanoTime()).as("it came in " + SECONDS + " s").isLessThan(until);
            Thread.sleep(50);
        }
    }

    private static String get(HttpClient client, String address) {
        try {
            return client.send(
                            HttpRequest.newBuilder(URI.create(address)).build(), HttpResponse.BodyHandlers.ofString())
                    .body();
        } catch (IOException | InterruptedException e) {
            throw new AssertionError(address, e);
        }
    }

    private static String browser() {
        String named = System.getProperty("papermath.browser", "");
        if (!named.isEmpty()) {
            return named;
        }
        for (String place : System.getenv("PATH").split(File.pathSeparator)) {
            for (String name : List.of("chromium", "chromium-browser", "google-chrome")) {
                Path file = Path.of(place, name);
                if (Files.isExecutable(file)) {
                    return file.toString();
                }
            }
        }
        throw new AssertionError("no Chromium on the path; name one with -Dpapermath.browser=...");
    }

    /** Puts whole messages into the queue. */
    private final class Listener implements WebSocket.Listener {
        private final StringBuilder text = new StringBuilder();

        @Override
        public CompletionStage<?> onText(WebSocket from, CharSequence data, boolean last) {
            text.append(data);
            if (last) {
                answers.add(JSON.readTree(text.toString()));
                text.setLength(0);
            }
            from.request(1);
            return null;
        }
    }
}
