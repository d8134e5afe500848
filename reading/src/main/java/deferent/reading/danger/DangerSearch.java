package deferent.reading.danger;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Clash;
import deferent.reading.body.Nearness;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.body.Room;
import deferent.reading.body.SideRoom;
import deferent.reading.body.Tender;
import deferent.reading.body.TenderPart;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Holds one quantity after the other against its bound. What the room says keeps clear is not asked
 * again, so that a calm motion costs next to nothing.
 */
final class DangerSearch {
    /** No centre is moved further than that, metres: beyond it is another motion. */
    private static final double FAR = 1.0;

    private final Trace trace;
    private final Performer performer;
    private final Kit kit;
    private final boolean ends;
    private final double radius;
    private final Tender tender;
    private final Clash clash;
    private final Slower slower;
    private final List<Danger> found = new ArrayList<>();

    DangerSearch(Trace trace, Performer performer, Kit kit, boolean ends) {
        this.trace = trace;
        this.performer = performer;
        this.kit = kit;
        this.ends = ends;
        this.radius = kit.headDiameter() / 2;
        this.tender = new Tender(trace, performer, radius);
        this.clash = new Clash(trace, radius);
        this.slower = new Slower(trace.pairing(), performer, kit);
    }

    List<Danger> found() {
        return found;
    }

    private interface End {
        DangerEnd at(double limit);
    }

    private Bound bound(Hazard hazard) {
        return Bound.of(hazard, kit.heads());
    }

    private void add(Hazard hazard, Optional<Side> side, double value, double time, End end) {
        Bound bound = bound(hazard);
        Level level = bound.level(value);
        if (level != Level.CALM) {
            double limit = bound.at(level);
            found.add(
                    new Danger(
                            level,
                            hazard,
                            side,
                            value,
                            time,
                            limit,
                            ends && told(hazard) ? Optional.of(end.at(limit)) : Optional.empty()));
        }
    }

    // To one who turns, forward is now this way and now that.
    private boolean told(Hazard hazard) {
        return hazard.ends() != Hazard.Ends.FORWARD || !trace.turned();
    }

    void room(Room room) {
        for (Side side : Side.values()) {
            SideRoom one = room.side(side);
            body(one);
            if (one.headToOtherHand().distance() < clash.handTouched()) {
                clash.handStruck(side)
                        .ifPresent(
                                met ->
                                        add(
                                                Hazard.HAND_STRUCK,
                                                Optional.of(side),
                                                met.speed(),
                                                met.time(),
                                                limit -> apart(clash.handApart(side, FAR))));
            }
        }
        if (room.headToHead().distance() < clash.headsTouch()) {
            clash.heads()
                    .ifPresent(
                            met ->
                                    add(
                                            Hazard.HEADS_MEET,
                                            Optional.empty(),
                                            met.speed(),
                                            met.time(),
                                            limit -> apart(clash.headsApart(FAR))));
        }
        if (room.tetherToTether().distance() < bound(Hazard.CORDS).care()) {
            Nearness cords = clash.cords();
            add(
                    Hazard.CORDS,
                    Optional.empty(),
                    cords.distance(),
                    cords.time(),
                    limit -> apart(clash.cordsApart(limit, FAR)));
        }
    }

    /** A part of the body lies within its outline: what keeps clear of this keeps clear of that. */
    private void body(SideRoom room) {
        Side side = room.side();
        double head = room.headToBody().distance() - radius;
        double tether = room.tetherToBody().distance();
        add(
                Hazard.BODY,
                Optional.of(side),
                Math.min(head, tether),
                head < tether ? room.headToBody().time() : room.tetherToBody().time(),
                limit -> forward(tender.forward(side, limit, FAR)));
        for (TenderPart part : TenderPart.values()) {
            Hazard hazard = hazard(part);
            if (Math.min(head, tether) < bound(hazard).care()) {
                Nearness nearest = tender.nearest(side, part);
                add(
                        hazard,
                        Optional.of(side),
                        nearest.distance(),
                        nearest.time(),
                        limit -> forward(tender.forward(side, part, limit, FAR)));
            }
        }
    }

    private static Hazard hazard(TenderPart part) {
        return switch (part) {
            case FACE -> Hazard.FACE;
            case THROAT -> Hazard.THROAT;
            case GROIN -> Hazard.GROIN;
        };
    }

    private DangerEnd forward(OptionalDouble metres) {
        return end(DangerEnd.Kind.FORWARD, metres, List.of(Side.values()));
    }

    private DangerEnd apart(OptionalDouble metres) {
        return end(DangerEnd.Kind.APART, metres, List.of(clash.front()));
    }

    private DangerEnd end(DangerEnd.Kind kind, OptionalDouble metres, List<Side> moved) {
        if (metres.isEmpty()) {
            return DangerEnd.NONE;
        }
        double by = metres.getAsDouble();
        return inReach(by, moved) ? new DangerEnd(kind, by) : DangerEnd.BEYOND_REACH;
    }

    /** Whether the arms get there so far forward, or at least as well as they do now. */
    private boolean inReach(double by, List<Side> moved) {
        Pairing there = trace.pairing();
        for (Side side : moved) {
            Part part = there.part(side);
            Place place = part.place();
            Vector3D centre = place.centre().add(new Vector3D(0, 0, by));
            there = there.with(side, part.with(place.withCentre(centre)));
        }
        double now = tooFar(trace);
        return tooFar(Trace.of(there)) <= Math.max(now, Reach.GIVES);
    }

    private double tooFar(Trace there) {
        Reach reach = Reach.of(there, performer);
        return Math.max(reach.turned().tooFar(), reach.tooNear());
    }

    void pull(Pull pull) {
        for (Hazard hazard : Slower.OF_THE_PULL) {
            double value = slower.of(hazard, pull);
            add(
                    hazard,
                    Optional.of(pull.side()),
                    value,
                    hazard == Hazard.HEAD_SPEED || hazard == Hazard.HEAD_ENERGY
                            ? pull.headSpeedTime()
                            : pull.handForceTime(),
                    limit -> slower.end(hazard, pull.side(), value, limit));
        }
    }

    void turns(Side side) {
        Part part = trace.pairing().part(side);
        double turns = Math.abs(part.motion().spin().turns()) * part.cycles();
        add(
                Hazard.POI_TURNS,
                Optional.of(side),
                turns / trace.period(),
                trace.interval().start(),
                limit -> slower.turnsEnd(turns / trace.period(), limit));
    }

    void audience(Side side) {
        Nearness farthest = Slower.farthest(trace, side);
        add(
                Hazard.AUDIENCE,
                Optional.of(side),
                farthest.distance() + radius,
                farthest.time(),
                limit -> slower.audienceEnd(side, limit));
    }
}
