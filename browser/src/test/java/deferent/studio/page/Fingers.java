package deferent.studio.page;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;

/** Fingers on the glass, as the browser's own protocol has them: Playwright itself only taps. */
final class Fingers {
    private final CDPSession session;

    Fingers(Page page) {
        this.session = page.context().newCDPSession(page);
    }

    /**
     * @param places x, y of each finger that is on the glass, pixels; none once all are lifted
     */
    private void send(String type, double... places) {
        JsonArray points = new JsonArray();
        for (int i = 0; i < places.length; i += 2) {
            JsonObject point = new JsonObject();
            point.addProperty("x", places[i]);
            point.addProperty("y", places[i + 1]);
            point.addProperty("id", i / 2);
            points.add(point);
        }
        JsonObject what = new JsonObject();
        what.addProperty("type", type);
        what.add("touchPoints", points);
        session.send("Input.dispatchTouchEvent", what);
    }

    void press(double... places) {
        send("touchStart", places);
    }

    void move(double... places) {
        send("touchMove", places);
    }

    void lift() {
        send("touchEnd");
    }

    void tap(double x, double y) {
        press(x, y);
        lift();
    }
}
