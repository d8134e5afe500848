package deferent.reading.body;

import deferent.motion.shared.Side;

/**
 * How near one side's hand, tether and head come to the other hand and to the body.
 *
 * @param side whose they are
 * @param headToOtherHand from this side's head to the other side's grip
 * @param headToBody from the head's centre to the body's outline
 * @param handToBody from the grip to it
 * @param tetherToBody from any point of the tether to it, hand and head included
 * @param nearestPart what of the body the tether is nearest to when it is nearest
 */
public record SideRoom(
        Side side,
        Nearness headToOtherHand,
        Nearness headToBody,
        Nearness handToBody,
        Nearness tetherToBody,
        BodyOutline.Part nearestPart) {}
