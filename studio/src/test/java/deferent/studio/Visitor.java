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

    private Visitor(Studio studio) {
        this.studio = studio;
    }

    static Visitor to(Path shelf) {
        return new Visitor(Studio.start(StudioOptions.of(shelf)));
    }

    static Visitor to(StudioOptions options) {
        return new Visitor(Studio.start(options));
    }

    HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(studio.address().resolve(path));
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
        return URI.create("ws://127.0.0.1:" + studio.port() + "/api/live");
    }

    String origin() {
        return "http://127.0.0.1:" + studio.port();
    }

    @Override
    public void close() {
        studio.close();
    }
}
