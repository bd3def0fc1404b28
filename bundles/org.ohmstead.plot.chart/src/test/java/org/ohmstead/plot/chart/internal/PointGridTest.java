// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The grid is held against going through all places. */
class PointGridTest {
    @Test
    void countsWhatIsInARectangle() {
        Random random = new Random(2);
        Rectangle2D area = new Rectangle2D.Double(30, 7, 333, 200);
        PointGrid grid = new PointGrid(area);
        List<Point2D> inside = new ArrayList<>();
        for (int i = 0; i < 5_000; i++) {
            // On whole places many lie on the edges of the rectangles.
            Point2D point = new Point2D.Double(random.nextInt(400), random.nextInt(230));
            grid.add(point.getX(), point.getY());
            if (area.contains(point)) {
                inside.add(point);
            }
        }
        assertEquals(inside.size(), grid.size());
        for (int i = 0; i < 500; i++) {
            Rectangle2D place = new Rectangle2D.Double(
                    random.nextInt(420) - 10, random.nextInt(250) - 10, random.nextInt(120), random.nextInt(40));
            assertEquals(inside.stream().filter(place::contains).count(), grid.countIn(place), place.toString());
        }
    }
}
