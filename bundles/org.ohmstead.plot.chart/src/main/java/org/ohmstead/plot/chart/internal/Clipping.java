// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.geom.Point2D;
import java.util.List;

/**
 * Where a line enters and leaves the square of places that renderers can reckon with. Without these points a line to a
 * far place would lead to where that place is moved in, and so be drawn askew when zoomed far in.
 */
final class Clipping {
    private static final double FAR = Stage.FAR;

    private Clipping() {}

    static boolean isFar(double x, double y) {
        return Math.abs(x) > FAR || Math.abs(y) > FAR;
    }

    /** The ends of the part inside the square, in order, as far as they are not the ends of the line itself. */
    static List<Point2D> crossings(double fromX, double fromY, double toX, double toY) {
        double across = toX - fromX;
        double down = toY - fromY;
        if (!Double.isFinite(across) || !Double.isFinite(down)) {
            return List.of();
        }
        double[] shares = {0, 1};
        boolean crosses = narrow(shares, -across, fromX + FAR)
                && narrow(shares, across, FAR - fromX)
                && narrow(shares, -down, fromY + FAR)
                && narrow(shares, down, FAR - fromY);
        if (!crosses) {
            return List.of();
        }
        Point2D entry = new Point2D.Double(fromX + shares[0] * across, fromY + shares[0] * down);
        Point2D exit = new Point2D.Double(fromX + shares[1] * across, fromY + shares[1] * down);
        if (shares[0] <= 0) {
            return shares[1] >= 1 ? List.of() : List.of(exit);
        }
        return shares[1] >= 1 ? List.of(entry) : List.of(entry, exit);
    }

    /** Narrows the part by one side of the square (Liang and Barsky, ACM TOG 3, 1984); false if none is left. */
    private static boolean narrow(double[] shares, double outwards, double room) {
        if (outwards == 0) {
            return room >= 0;
        }
        double share = room / outwards;
        if (outwards < 0) {
            shares[0] = Math.max(shares[0], share);
        } else {
            shares[1] = Math.min(shares[1], share);
        }
        return shares[0] <= shares[1];
    }
}
