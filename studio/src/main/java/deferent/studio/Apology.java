package deferent.studio;

import java.util.Map;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;

/**
 * What the web server itself has to refuse, before or beside the studio's own answers: in the same
 * form and under the same headers as everything else, and without a word of what was sent.
 */
final class Apology extends ErrorHandler {
    private record Said(String what, String where, String right) {}

    private static final Said MALFORMED =
            new Said("is no request that can be read", "request", "start from the studio's page");

    private static final Map<Integer, Said> SAID =
            Map.of(
                    404,
                    new Said("is nothing the studio has", "address", "start from its page"),
                    405,
                    new Said("is not answered", "method", "send GET or POST"),
                    408,
                    new Said("did not come in time", "request", "send all of it at once"),
                    414,
                    new Said("is too long", "address", "send at most 8 KiB"),
                    431,
                    new Said("are too long", "headers", "send at most 8 KiB"),
                    500,
                    new Said("could not be worked out", "studio", "ask for something else"),
                    501,
                    new Said("is not known here", "method or coding", "send GET or POST"),
                    505,
                    new Said("is not spoken here", "version", "speak HTTP/1.1"));

    @Override
    public boolean handle(Request request, Response response, Callback callback) {
        int status = response.getStatus();
        if (request.getAttribute(ERROR_EXCEPTION)
                instanceof org.eclipse.jetty.http.HttpException bad) {
            status = bad.getCode();
        }
        Gate.guard(response.getHeaders(), request);
        Said said = SAID.getOrDefault(status, MALFORMED);
        Gate.refuse(
                request,
                response,
                callback,
                new BadRequest(status, said.what(), said.where(), said.right()));
        return true;
    }
}
