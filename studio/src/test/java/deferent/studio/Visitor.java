package deferent.studio;

import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import tools.jackson.databind.JsonNode;

/** A studio that is open for the length of a test, and a visitor who talks to it over HTTP. */
final class Visitor implements AutoCloseable {
    final Studio studio;
    final HttpClient client = HttpClient.newHttpClient();

    /** With which this visitor asks. */
    final String key;

    private Visitor(Studio studio) {
        this.studio = studio;
        this.key = json(trade(studio.opening().address())).get("session").asString();
    }

    /** What the shell does with an opening. */
    HttpResponse<String> trade(URI opening) {
        return send(
                bare("/api/open")
                        .header("Content-Type", "application/json")
                        .POST(
                                BodyPublishers.ofString(
                                        "{\"key\":\""
                                                + opening.getFragment().substring("open=".length())
                                                + "\"}"))
                        .build());
    }

    static Visitor to(Path shelf) {
        return new Visitor(Studio.start(StudioOptions.of(shelf)));
    }

    static Visitor to(StudioOptions options) {
        return new Visitor(Studio.start(options));
    }

    /** A request that says no key. */
    HttpRequest.Builder bare(String path) {
        return HttpRequest.newBuilder(studio.address().resolve(path));
    }

    HttpRequest.Builder request(String path) {
        return bare(keyed(path)).header("Content-Type", "application/json");
    }

    /** An address behind the visitor's key, but for those that have keys of their own. */
    String keyed(String path) {
        return path.startsWith("/api/taken/") || path.startsWith("/api/preview/")
                ? path
                : "/" + key + path;
    }

    /** The studio's page, as the shell goes on to it. */
    HttpResponse<String> page() {
        String page = json(post("/api/page", "{}")).get("page").asString();
        return send(bare("/" + page + "/").build());
    }

    HttpResponse<String> get(String path) {
        return send(request(path).build());
    }

    HttpResponse<String> post(String path, String body) {
        return send(request(path).POST(BodyPublishers.ofString(body)).build());
    }

    HttpResponse<String> send(HttpRequest request) {
        try {
            return client.send(request, BodyHandlers.ofString());
        } catch (IOException e) {
            throw new AssertionError(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }

    /** Asks, and takes the answer for granted. */
    JsonNode ask(String question) {
        HttpResponse<String> response = post("/api/ask", question);
        if (response.statusCode() != 200) {
            throw new AssertionError(response.statusCode() + ": " + response.body());
        }
        return json(response);
    }

    JsonNode pairing(String phrase) {
        return ask("{\"id\":1,\"ask\":\"pairing\",\"phrase\":\"" + phrase + "\"}");
    }

    static JsonNode json(HttpResponse<String> response) {
        return Desk.JSON.readTree(response.body());
    }

    /**
     * Sends bytes as they are, for what a well-behaved client would never send; the whole answer.
     */
    String raw(String request) {
        try (Socket socket = new Socket("127.0.0.1", studio.port())) {
            socket.setSoTimeout(120_000);
            OutputStream out = socket.getOutputStream();
            out.write(request.getBytes(StandardCharsets.ISO_8859_1));
            out.flush();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    URI live() {
        return URI.create("ws://127.0.0.1:" + studio.port() + keyed("/api/live"));
    }

    String origin() {
        return "http://127.0.0.1:" + studio.port();
    }

    @Override
    public void close() {
        studio.close();
    }
}
