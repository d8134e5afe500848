package deferent.studio;

import jakarta.servlet.ServletRequest;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpURI;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * Who may talk to the studio: who has a key. Listening on loopback keeps other machines out, not
 * the other users of this one, nor other web pages in the same browser.
 *
 * <p>So the Host must be this machine's own names with the studio's own port (against names that
 * are rebound to 127.0.0.1); an Origin, where the browser sends one, must be the studio's own, and
 * a WebSocket, which browsers open across origins without asking, must have one; a page from
 * elsewhere, another port of this machine being elsewhere, may only lead to the {@linkplain #SHELL
 * shell}, in which nothing stands. Everything else is behind a session key, the first part of its
 * path: {@code /KEY/api/ask} is answered as {@code /api/ask}. What leaves the page's own hands has
 * keys of its own instead, so that the session's is never in a frame's address nor in what a
 * browser notes beside a file it has fetched.
 */
final class Gate extends Handler.Wrapper {
    /** What is answered without a key. */
    static final String SHELL = "/";

    /** Where an opening key is traded for a session key. */
    static final String OPEN = "/api/open";

    /** Where the page itself is, for who has turned a page key. */
    static final String PAGE = "/page";

    /** Previews that are shown in frames, and files: under keys of their own. */
    static final String FRAMED = "/api/preview/";

    static final String TAKEN = "/api/taken/";

    /** The session key of a request, as an attribute of it. */
    static final String SESSION = "deferent.session";

    private static final String WELCOME = "deferent.welcome";
    private static final Set<String> NAMES = Set.of("localhost", "127.0.0.1", "[::1]");
    private static final Set<String> READING = Set.of("GET", "HEAD");
    private static final Set<String> ANSWERED = Set.of("GET", "HEAD", "POST", "PUT", "DELETE");
    private static final Set<String> KNOWN = Set.of("OPTIONS", "TRACE", "CONNECT", "PATCH");
    private static final Pattern KEYED = Pattern.compile("/([A-Za-z0-9_-]{32})(/.*)");
    private static final String ANEW =
            "open the studio anew: press Enter where it runs, or start it again";

    /** The policy that a page carries in itself. */
    private static final Pattern OWN =
            Pattern.compile("<meta http-equiv=\"Content-Security-Policy\" content=\"([^\"]*)\">");

    private final KeyRing keys;
    private final Crowd crowd;

    Gate(KeyRing keys, Crowd crowd) {
        this.keys = keys;
        this.crowd = crowd;
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        guard(response.getHeaders(), request);
        Request let;
        try {
            fromHere(request);
            let = behind(request);
            wellFormed(let);
        } catch (BadRequest refused) {
            refuse(request, response, callback, refused);
            return true;
        }
        return super.handle(let, response, callback);
    }

    /** Turns away what comes from elsewhere. */
    private static void fromHere(Request request) {
        int port = Request.getLocalPort(request);
        HttpFields headers = request.getHeaders();
        List<String> hosts = headers.getValuesList(HttpHeader.HOST);
        if (hosts.size() != 1 || !own(hosts.get(0), port)) {
            throw stranger("is for another host");
        }
        List<String> origins = headers.getValuesList(HttpHeader.ORIGIN);
        if (upgrades(headers) && origins.isEmpty()) {
            throw stranger("opens a socket without saying from which page");
        }
        for (String origin : origins) {
            if (!origin.startsWith("http://") || !own(origin.substring(7), port)) {
                throw stranger("comes from another site's page");
            }
        }
        // Typed into the address bar, or asked by the studio's own page, or by no browser at all.
        String site = Optional.ofNullable(headers.get("Sec-Fetch-Site")).orElse("none");
        boolean reading = READING.contains(request.getMethod());
        boolean leads =
                reading
                        && path(request).equals(SHELL)
                        && "navigate".equals(headers.get("Sec-Fetch-Mode"));
        if (!site.equals("same-origin") && !site.equals("none") && !leads) {
            throw stranger("comes from another site's page");
        }
    }

    private static boolean upgrades(HttpFields headers) {
        return headers.contains(HttpHeader.UPGRADE, "websocket")
                || headers.contains(HttpHeader.SEC_WEBSOCKET_KEY)
                || headers.contains(HttpHeader.SEC_WEBSOCKET_VERSION);
    }

    private static boolean own(String host, int port) {
        int colon = host.lastIndexOf(':');
        boolean named = colon > host.lastIndexOf(']');
        String name = (named ? host.substring(0, colon) : host).toLowerCase(Locale.ROOT);
        String said = named ? host.substring(colon + 1) : "80";
        return NAMES.contains(name) && said.equals(Integer.toString(port));
    }

    private static String path(Request request) {
        return Optional.ofNullable(request.getHttpURI().getPath()).orElse("");
    }

    /** Lets a connection stay whose request had a key of another kind. */
    static void welcome(ServletRequest request) {
        if (request.getAttribute(WELCOME) instanceof Runnable let) {
            let.run();
        }
    }

    /** The request as it is answered behind the gate; refuses one without a key. */
    private Request behind(Request request) {
        String path = path(request);
        String method = request.getMethod();
        if (!ANSWERED.contains(method)) {
            throw KNOWN.contains(method)
                    ? new BadRequest(
                            405, "is not answered", method, "send GET, HEAD, POST, PUT or DELETE")
                    : new BadRequest(501, "is not known here", "the method", "send GET or POST");
        }
        boolean reading = READING.contains(method) && !upgrades(request.getHeaders());
        if (path.equals(SHELL) || path.startsWith(FRAMED) || path.startsWith(TAKEN)) {
            if (!reading) {
                throw new BadRequest(405, "is only read", "this address", "send GET");
            }
            request.setAttribute(WELCOME, (Runnable) () -> crowd.welcome(request));
            return request;
        }
        if (path.equals(OPEN)) {
            if (!method.equals("POST")) {
                throw new BadRequest(405, "is only posted to", OPEN, "send POST");
            }
            return request;
        }
        Matcher keyed = KEYED.matcher(path);
        if (keyed.matches()) {
            String key = keyed.group(1);
            String rest = keyed.group(2);
            if (rest.equals("/") && method.equals("GET")) {
                Optional<String> session = keys.turned(key);
                if (session.isPresent()) {
                    crowd.welcome(request);
                    return as(request, PAGE, session.get());
                }
            }
            if (keys.knows(key)) {
                crowd.welcome(request);
                if (rest.equals(SHELL) || rest.equals(OPEN) || rest.equals(PAGE)) {
                    throw new BadRequest(404, "is nothing the studio has", rest, ANEW);
                }
                return as(request, rest, key);
            }
        }
        throw new BadRequest(403, "has no key that opens the studio", "request", ANEW);
    }

    private static Request as(Request request, String path, String session) {
        HttpURI uri;
        try {
            String query = request.getHttpURI().getQuery();
            uri =
                    HttpURI.build(request.getHttpURI(), query == null ? path : path + "?" + query)
                            .asImmutable();
        } catch (IllegalArgumentException bad) {
            throw new BadRequest(400, "is no path", "the address", "start from the studio's page");
        }
        Request behind = Request.serveAs(request, uri);
        behind.setAttribute(SESSION, session);
        return behind;
    }

    /** What changes something says what it brings, and how much of it. */
    private static void wellFormed(Request request) {
        String method = request.getMethod();
        if (!method.equals("POST") && !method.equals("PUT")) {
            return;
        }
        HttpFields headers = request.getHeaders();
        String kind = Optional.ofNullable(headers.get(HttpHeader.CONTENT_TYPE)).orElse("");
        int end = kind.indexOf(';');
        if (!(end < 0 ? kind : kind.substring(0, end))
                .strip()
                .equalsIgnoreCase("application/json")) {
            throw new BadRequest(
                    415, "is not said to be JSON", "body", "send Content-Type: application/json");
        }
        if (!headers.contains(HttpHeader.CONTENT_LENGTH)
                && !headers.contains(HttpHeader.TRANSFER_ENCODING)) {
            throw new BadRequest(411, "has no length", "body", "send Content-Length");
        }
        String coding = headers.get(HttpHeader.TRANSFER_ENCODING);
        if (coding != null && !coding.equalsIgnoreCase("chunked")) {
            throw new BadRequest(501, "is not known here", "Transfer-Encoding", "say chunked");
        }
        if (request.getLength() > Bodies.most(request)) {
            throw Bodies.tooLarge(request);
        }
    }

    private static BadRequest stranger(String what) {
        return new BadRequest(
                403,
                what,
                "request",
                "open the studio's own address, as it printed it when it started");
    }

    /** Answers in the house's form of an error, whatever else the request brings. */
    static void refuse(Request request, Response response, Callback callback, BadRequest refused) {
        byte[] body =
                Trouble.body(refused.what(), refused.where(), refused.right())
                        .toString()
                        .getBytes(StandardCharsets.UTF_8);
        HttpFields.Mutable headers = response.getHeaders();
        response.setStatus(refused.status());
        headers.put(HttpHeader.CONTENT_TYPE, "application/json;charset=utf-8");
        headers.put(HttpHeader.CONTENT_LENGTH, body.length);
        if (refused.status() == 405) {
            headers.put(HttpHeader.ALLOW, "GET, HEAD, POST, PUT, DELETE");
        }
        boolean more = request.getLength() != 0;
        if (more) {
            headers.put(HttpHeader.CONNECTION, "close");
        }
        response.write(
                true, ByteBuffer.wrap(body), more ? new Remainder(request, callback) : callback);
    }

    /** The headers that every answer carries. */
    static void guard(HttpFields.Mutable headers, Request request) {
        int port =
                request.getConnectionMetaData().getLocalSocketAddress()
                                instanceof InetSocketAddress local
                        ? local.getPort()
                        : 0;
        headers.put("Content-Security-Policy", policy(Assets.Inline.NONE, port));
        for (HttpField field : GUARDS) {
            headers.put(field);
        }
    }

    private static final List<HttpField> GUARDS =
            List.of(
                    new HttpField("X-Content-Type-Options", "nosniff"),
                    new HttpField("X-Frame-Options", "DENY"),
                    new HttpField("Referrer-Policy", "no-referrer"),
                    new HttpField("Cross-Origin-Opener-Policy", "same-origin"),
                    new HttpField("Cross-Origin-Resource-Policy", "same-origin"),
                    new HttpField("Cache-Control", "no-store"));

    /**
     * What a page may load and run: the studio's own files, and of what stands in it exactly the
     * scripts and styles whose hashes are given. Style attributes are allowed, since places and
     * sizes are set through them.
     */
    static String policy(Assets.Inline inline, int port) {
        return "default-src 'none'; script-src 'self'"
                + inline.scripts()
                + "; style-src 'self'"
                + inline.styles()
                + "; style-src-attr 'unsafe-inline'; img-src 'self' data: blob:;"
                + " media-src blob:;"
                + " font-src 'self'; connect-src 'self' ws://localhost:"
                + port
                + " ws://127.0.0.1:"
                + port
                + "; frame-src http://localhost:"
                + port
                + FRAMED
                + " http://127.0.0.1:"
                + port
                + FRAMED
                + "; base-uri "
                + (inline.base() ? "'self'" : "'none'")
                + "; form-action 'none'; frame-ancestors 'none'";
    }

    /** The policy of a page that is shown in a frame: its own, and of no origin. */
    static String framed(byte[] html) {
        Matcher own = OWN.matcher(new String(html, StandardCharsets.UTF_8));
        return (own.find() ? own.group(1) : "default-src 'none'")
                + "; sandbox allow-scripts; frame-ancestors 'self'";
    }
}
