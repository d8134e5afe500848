package deferent.studio;

import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Who may talk to the studio: pages that came from it, and programs of this machine.
 *
 * <p>Listening on loopback keeps other machines out, not other web pages in the same browser. So
 * the Host must be this machine's own names with the studio's own port (against names that are
 * rebound to 127.0.0.1), an Origin, where the browser sends one, must be the studio's own, and a
 * WebSocket, which browsers open across origins without asking, must have one.
 */
final class Gate implements Filter {
    private static final Set<String> NAMES = Set.of("localhost", "127.0.0.1", "[::1]");

    /** The only addresses that are shown in frames. */
    private static final String FRAMED = "/api/preview/";

    /** The policy that a page carries in itself. */
    private static final Pattern OWN =
            Pattern.compile("<meta http-equiv=\"Content-Security-Policy\" content=\"([^\"]*)\">");

    @Override
    public void doFilter(ServletRequest request, ServletResponse response, FilterChain chain)
            throws IOException, ServletException {
        if (!(request instanceof HttpServletRequest asked)
                || !(response instanceof HttpServletResponse answer)) {
            return;
        }
        guard(answer, asked.getLocalPort());
        String refused = refusal(asked);
        if (refused.isEmpty()) {
            chain.doFilter(request, response);
            return;
        }
        answer.setStatus(HttpServletResponse.SC_FORBIDDEN);
        answer.setContentType("application/json;charset=utf-8");
        byte[] body =
                Trouble.body(
                                refused,
                                "request",
                                "open the studio's own address, as it printed it when it started")
                        .toString()
                        .getBytes(StandardCharsets.UTF_8);
        answer.setContentLength(body.length);
        answer.getOutputStream().write(body);
    }

    /** What speaks against a request; empty where nothing does. */
    private static String refusal(HttpServletRequest asked) {
        int port = asked.getLocalPort();
        List<String> hosts = Collections.list(asked.getHeaders("Host"));
        if (hosts.size() != 1 || !own(hosts.get(0), port)) {
            return "is for another host";
        }
        List<String> origins = Collections.list(asked.getHeaders("Origin"));
        boolean upgrades = "websocket".equalsIgnoreCase(asked.getHeader("Upgrade"));
        if (upgrades && origins.isEmpty()) {
            return "opens a socket without saying from which page";
        }
        for (String origin : origins) {
            if (!origin.startsWith("http://") || !own(origin.substring(7), port)) {
                return "comes from another site's page";
            }
        }
        String site = asked.getHeader("Sec-Fetch-Site");
        if ("cross-site".equals(site) && !"navigate".equals(asked.getHeader("Sec-Fetch-Mode"))) {
            return "comes from another site's page";
        }
        return "";
    }

    private static boolean own(String host, int port) {
        int colon = host.lastIndexOf(':');
        boolean named = colon > host.lastIndexOf(']');
        String name = (named ? host.substring(0, colon) : host).toLowerCase(Locale.ROOT);
        String said = named ? host.substring(colon + 1) : "80";
        return NAMES.contains(name) && said.equals(Integer.toString(port));
    }

    private static void guard(HttpServletResponse answer, int port) {
        answer.setHeader("Content-Security-Policy", policy("", port));
        answer.setHeader("X-Content-Type-Options", "nosniff");
        answer.setHeader("X-Frame-Options", "DENY");
        answer.setHeader("Referrer-Policy", "no-referrer");
        answer.setHeader("Cross-Origin-Opener-Policy", "same-origin");
        answer.setHeader("Cross-Origin-Resource-Policy", "same-origin");
        answer.setHeader("Cache-Control", "no-store");
    }

    /**
     * What the page may load and run: its own files, and of inline scripts exactly those whose
     * hashes are given. Style attributes are allowed, since places and sizes are set through them.
     */
    static String policy(String hashes, int port) {
        return "default-src 'none'; script-src 'self'"
                + hashes
                + "; style-src 'self'; style-src-attr 'unsafe-inline'; img-src 'self' data: blob:;"
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
                + "; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
    }

    /**
     * Lets the studio's page, and no other, show a page of its own making in a frame: sandboxed, so
     * that it is of no origin and reaches nothing of the studio, and under its own policy.
     */
    static void frame(HttpServletResponse answer, byte[] html) {
        Matcher own = OWN.matcher(new String(html, StandardCharsets.UTF_8));
        answer.setHeader(
                "Content-Security-Policy",
                (own.find() ? own.group(1) : "default-src 'none'")
                        + "; sandbox allow-scripts; frame-ancestors 'self'");
        answer.setHeader("X-Frame-Options", "SAMEORIGIN");
    }
}
