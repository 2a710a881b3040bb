package org.papermath.examples;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.jspecify.annotations.Nullable;

/**
 * The making card behind a form on one page, for a browser on the same machine: an order is typed in, the card comes back as a
 * page to print, and what is wrong stands beside its field. The pages need no script.
 *
 * <p>This is an example of how a program with pages embeds the library, and not a server for the open net: it knows no users, no
 * encryption and no limit on how often it is asked. It listens on 127.0.0.1 alone, answers only to that name, takes no form that
 * another page sends, and no more than 16 KiB of one.
 */
public final class CardPageServer implements AutoCloseable {
    /** The port it listens on if none is given. */
    static final int PORT = 8765;

    private static final int MOST_BYTES = 16 * 1024;
    private static final int BAD_INPUT = 2;
    private static final int OK = 200;
    private static final int BAD_REQUEST = 400;
    private static final int FORBIDDEN = 403;
    private static final int NOT_FOUND = 404;
    private static final int METHOD_NOT_ALLOWED = 405;
    private static final int TOO_LARGE = 413;
    private static final int WRONG_TYPE = 415;
    private static final int MISDIRECTED = 421;
    private static final int UNPROCESSABLE = 422;
    private static final int FAILED = 500;
    private static final String FORM = "application/x-www-form-urlencoded";

    /** What is answered: the status, the sort of text and the text. */
    private record Answer(int status, String type, String text) {
        static Answer page(int status, String text) {
            return new Answer(status, "text/html", text);
        }

        static Answer said(int status, String text) {
            return new Answer(status, "text/plain", text + "\n");
        }
    }

    private final HttpServer server;
    private final ExecutorService workers;

    private CardPageServer(HttpServer server, ExecutorService workers) {
        this.server = server;
        this.workers = workers;
    }

    /**
     * Serves the page until the program is ended.
     *
     * @param args the port to listen on; none for 8765
     * @throws IOException if the port cannot be had
     */
    public static void main(String[] args) throws IOException {
        PrintStream out = Output.utf8();
        Optional<Integer> port = port(List.of(args));
        if (port.isEmpty()) {
            out.println("usage: CardPageServer [port]\n  A port is a whole number from 1 to 65535; without it, " + PORT
                    + ".");
            System.exit(BAD_INPUT);
            return;
        }
        CardPageServer started = start(port.get());
        out.println("The page is at " + started.address() + " until this program is ended, with Ctrl and C.");
    }

    private static Optional<Integer> port(List<String> args) {
        if (args.isEmpty()) {
            return Optional.of(PORT);
        }
        boolean whole = args.size() == 1 && args.get(0).matches("[0-9]{1,5}");
        int port = whole ? Integer.parseInt(args.get(0)) : 0;
        return port >= 1 && port <= 65535 ? Optional.of(port) : Optional.empty();
    }

    /** Starts to listen; port 0 takes any that is free. */
    static CardPageServer start(int port) throws IOException {
        HttpServer server =
                HttpServer.create(new InetSocketAddress(InetAddress.getByAddress(new byte[] {127, 0, 0, 1}), port), 0);
        ExecutorService workers = Executors.newFixedThreadPool(2);
        server.setExecutor(workers);
        CardPageServer started = new CardPageServer(server, workers);
        server.createContext("/", started::handle);
        server.start();
        return started;
    }

    /** Where the page is. */
    String address() {
        return "http://127.0.0.1:" + server.getAddress().getPort() + "/";
    }

    @Override
    public void close() {
        server.stop(0);
        workers.shutdownNow();
    }

    private void handle(HttpExchange exchange) throws IOException {
        try (exchange) {
            Answer answer;
            try {
                answer = answer(exchange);
            } catch (RuntimeException unexpected) {
                answer = Answer.said(FAILED, "The page failed. This should not happen: " + unexpected);
            }
            send(exchange, answer);
        }
    }

    private Answer answer(HttpExchange exchange) throws IOException {
        if (!isOwn(exchange.getRequestHeaders().getFirst("Host"), "")) {
            return Answer.said(MISDIRECTED, "This page answers to " + address() + " only.");
        }
        String origin = exchange.getRequestHeaders().getFirst("Origin");
        if (origin != null && !isOwn(origin, "http://")) {
            return Answer.said(FORBIDDEN, "This page takes its own form only.");
        }
        String path = exchange.getRequestURI().getPath();
        String method = exchange.getRequestMethod();
        if (path.equals("/") && (method.equals("GET") || method.equals("HEAD"))) {
            return Answer.page(OK, OrderForm.empty().page());
        } else if (path.equals("/card") && method.equals("POST")) {
            return card(exchange);
        } else if (path.equals("/") || path.equals("/card")) {
            exchange.getResponseHeaders().set("Allow", path.equals("/") ? "GET, HEAD" : "POST");
            return Answer.said(METHOD_NOT_ALLOWED, "That cannot be done here.");
        }
        return Answer.said(NOT_FOUND, "There is no such page. Begin at " + address());
    }

    /** Whether a name is that of this server: other names may lead here too, from pages of others. */
    private boolean isOwn(@Nullable String given, String scheme) {
        int port = server.getAddress().getPort();
        return given != null
                && (given.equals(scheme + "127.0.0.1:" + port) || given.equals(scheme + "localhost:" + port));
    }

    private static Answer card(HttpExchange exchange) throws IOException {
        String type = exchange.getRequestHeaders().getFirst("Content-Type");
        if (type == null || !type.split(";", -1)[0].strip().equalsIgnoreCase(FORM)) {
            return Answer.said(WRONG_TYPE, "A form is expected here: " + FORM + ".");
        }
        byte[] body;
        try (InputStream in = exchange.getRequestBody()) {
            body = in.readNBytes(MOST_BYTES + 1);
        }
        if (body.length > MOST_BYTES) {
            return Answer.said(TOO_LARGE, "The form is longer than " + MOST_BYTES + " bytes. Shorten what is typed.");
        }
        Map<String, String> typed;
        try {
            typed = fields(new String(body, StandardCharsets.UTF_8));
        } catch (IllegalArgumentException broken) {
            return Answer.said(BAD_REQUEST, "The form cannot be read: " + broken.getMessage());
        }
        OrderForm form = OrderForm.of(typed);
        return form.card().map(page -> Answer.page(OK, page)).orElseGet(() -> Answer.page(UNPROCESSABLE, form.page()));
    }

    private static Map<String, String> fields(String body) {
        Map<String, String> fields = new LinkedHashMap<>();
        for (String pair : body.split("&", -1)) {
            int equals = pair.indexOf('=');
            if (equals > 0) {
                fields.putIfAbsent(
                        URLDecoder.decode(pair.substring(0, equals), StandardCharsets.UTF_8),
                        URLDecoder.decode(pair.substring(equals + 1), StandardCharsets.UTF_8));
            }
        }
        return fields;
    }

    private static void send(HttpExchange exchange, Answer answer) throws IOException {
        byte[] bytes = answer.text().getBytes(StandardCharsets.UTF_8);
        exchange.getResponseHeaders().set("Content-Type", answer.type() + "; charset=utf-8");
        exchange.getResponseHeaders().set("X-Content-Type-Options", "nosniff");
        exchange.getResponseHeaders().set("Cache-Control", "no-store");
        exchange.getResponseHeaders()
                .set(
                        "Content-Security-Policy",
                        "default-src 'none'; style-src 'unsafe-inline'; img-src data:; form-action 'self'; base-uri 'none';"
                                + " frame-ancestors 'none'");
        boolean head = exchange.getRequestMethod().equals("HEAD");
        exchange.sendResponseHeaders(answer.status(), head ? -1 : bytes.length);
        if (!head) {
            try (OutputStream out = exchange.getResponseBody()) {
                out.write(bytes);
            }
        }
    }
}
