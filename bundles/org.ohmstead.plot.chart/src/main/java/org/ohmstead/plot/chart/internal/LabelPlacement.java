// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.PlotPoint;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

/** Finds a place for each text: inside the area, off the other texts, over as little of the data as possible. */
final class LabelPlacement {
    private static final double SAMPLE_DISTANCE = 3;
    private static final int MOST_PARTS = 1000;
    private static final int MOST_SAMPLES = 40_000;
    private static final double GAP = 3;
    private static final int ROWS = 6;
    private static final double[] LINE_SHARES = {1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1, 0};
    private static final double[] DISTANCES = {0.85, 1.4, 2, 2.6, 3.2, 4, 5};
    private static final double OVER_TEXT = 1000;
    private static final double OVER_MARK = 12;
    private static final double OVER_DATA = 4;
    private static final double LATER_CHOICE = 0.8;

    private final Stage stage;
    private final PointGrid data;
    /** Where the lines run; a series is looked up by being the same. */
    private final Map<Series, List<Point2D>> lines = new IdentityHashMap<>();

    private final List<Rectangle2D> marks = new ArrayList<>();

    LabelPlacement(Plot plot, Stage stage) {
        this.stage = stage;
        data = new PointGrid(stage.area());
        for (Series series : plot.series()) {
            sample(series);
        }
        Rectangle2D area = stage.area();
        for (Mark mark : plot.marks()) {
            if (mark instanceof Mark.VerticalLine line) {
                marks.add(new Rectangle2D.Double(stage.x(line.x()) - 2, area.getY(), 4, area.getHeight()));
            } else if (mark instanceof Mark.HorizontalLine line) {
                marks.add(new Rectangle2D.Double(area.getX(), stage.y(line.y()) - 0.5, area.getWidth(), 1));
            } else if (mark instanceof Mark.Point point) {
                double size = Look.MARK_SIZE;
                marks.add(new Rectangle2D.Double(
                        stage.x(point.x()) - size / 2, stage.y(point.y()) - size / 2, size, size));
            }
        }
    }

    /**
     * The best place for each text out of its choices, moved inside the area. What is placed first takes room from what
     * comes later, so both orders are tried.
     */
    List<Rectangle2D> placed(List<List<Rectangle2D>> choicesOfTexts) {
        Rectangle2D[] forwards = new Rectangle2D[choicesOfTexts.size()];
        Rectangle2D[] backwards = new Rectangle2D[choicesOfTexts.size()];
        double costForwards = 0;
        for (int i = 0; i < forwards.length; i++) {
            costForwards += placeOne(choicesOfTexts, i, forwards);
        }
        double costBackwards = 0;
        for (int i = forwards.length - 1; i >= 0; i--) {
            costBackwards += placeOne(choicesOfTexts, i, backwards);
        }
        return List.of(costBackwards < costForwards ? backwards : forwards);
    }

    private double placeOne(List<List<Rectangle2D>> choicesOfTexts, int index, Rectangle2D[] places) {
        List<Rectangle2D> choices = choicesOfTexts.get(index);
        Rectangle2D best = null;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < choices.size(); i++) {
            Rectangle2D inside = movedInside(choices.get(i));
            double cost = cost(inside, places) + i * LATER_CHOICE;
            if (best == null || cost < least) {
                least = cost;
                best = inside;
            }
        }
        places[index] = best;
        return least;
    }

    /** Where the name of a line may stand: near it, the right end first; nowhere if no part of it is in the area. */
    List<Rectangle2D> choices(Series line, double width, double height) {
        List<Point2D> points = line(line).stream()
                .filter(point -> stage.area().contains(point))
                .toList();
        List<Rectangle2D> choices = new ArrayList<>();
        for (double share : LINE_SHARES) {
            if (!points.isEmpty()) {
                Point2D point = points.get((int) Math.round(share * (points.size() - 1)));
                double x = point.getX() - width / 2;
                choices.add(new Rectangle2D.Double(x, point.getY() - height - GAP, width, height));
                choices.add(new Rectangle2D.Double(x, point.getY() + GAP, width, height));
            }
        }
        return choices;
    }

    /** Where the text of a mark may stand, the usual places first. */
    List<Rectangle2D> choices(Mark mark, double width, double height) {
        Rectangle2D area = stage.area();
        List<Rectangle2D> choices = new ArrayList<>();
        if (mark instanceof Mark.VerticalLine line) {
            double x = stage.x(line.x());
            for (int row = 0; row < ROWS; row++) {
                double down = GAP + row * (height + 1);
                for (double y : new double[] {area.getMinY() + down, area.getMaxY() - down - height}) {
                    choices.add(new Rectangle2D.Double(x + GAP, y, width, height));
                    choices.add(new Rectangle2D.Double(x - GAP - width, y, width, height));
                }
            }
        } else if (mark instanceof Mark.HorizontalLine line) {
            double y = stage.y(line.y());
            for (double share : new double[] {1, 0, 0.75, 0.25, 0.5}) {
                double x = area.getMinX() + GAP + share * (area.getWidth() - 2 * GAP - width);
                choices.add(new Rectangle2D.Double(x, y - height - 1, width, height));
                choices.add(new Rectangle2D.Double(x, y + 1, width, height));
            }
        } else if (mark instanceof Mark.Point point) {
            addAround(choices, stage.x(point.x()), stage.y(point.y()), width, height);
        }
        return choices;
    }

    private static void addAround(List<Rectangle2D> choices, double x, double y, double width, double height) {
        for (double sizes : DISTANCES) {
            double distance = sizes * Look.MARK_SIZE;
            double left = x - distance - width;
            double right = x + distance;
            double above = y - distance - height;
            double below = y + distance;
            double middle = y - height / 2;
            double[][] corners = {
                {right, middle},
                {left, middle},
                {right, above},
                {left, above},
                {right, below},
                {left, below},
                {x - width / 2, above},
                {x - width / 2, below}
            };
            for (double[] corner : corners) {
                choices.add(new Rectangle2D.Double(corner[0], corner[1], width, height));
            }
        }
    }

    private Rectangle2D movedInside(Rectangle2D choice) {
        Rectangle2D area = stage.area();
        double x = Math.min(choice.getX(), area.getMaxX() - 1 - choice.getWidth());
        double y = Math.min(choice.getY(), area.getMaxY() - 1 - choice.getHeight());
        return new Rectangle2D.Double(
                Math.max(area.getMinX() + 1, x),
                Math.max(area.getMinY() + 1, y),
                choice.getWidth(),
                choice.getHeight());
    }

    private double cost(Rectangle2D place, Rectangle2D[] others) {
        double cost = 0;
        for (Rectangle2D text : others) {
            cost += text != null && text.intersects(place) ? OVER_TEXT : 0;
        }
        for (Rectangle2D mark : marks) {
            cost += mark.intersects(place) ? OVER_MARK : 0;
        }
        return cost + OVER_DATA * data.countIn(place);
    }

    private void sample(Series series) {
        if (series.style().hasLine()) {
            List<Point2D> points = line(series);
            for (int i = 1; i < points.size(); i++) {
                sampleStroke(points.get(i - 1), points.get(i));
            }
        }
        for (PlotPoint point : series.points()) {
            double x = stage.x(point.x());
            Point2D place = new Point2D.Double(x, stage.y(point.y()));
            if (series.style() == Style.STEMS) {
                sampleStroke(new Point2D.Double(x, stage.area().getMaxY()), place);
            } else if (series.style().hasBars()) {
                sampleStroke(new Point2D.Double(x, stage.baseline()), place);
            } else if (series.style().hasMarkers()) {
                double half = point.barHalfLength().orElse(0);
                sampleStroke(
                        new Point2D.Double(x, stage.y(point.y() + half)),
                        new Point2D.Double(x, stage.y(point.y() - half)));
            }
        }
    }

    private void sampleStroke(Point2D from, Point2D to) {
        if (data.size() >= MOST_SAMPLES) {
            return;
        }
        int parts = (int) Math.min(MOST_PARTS, Math.ceil(from.distance(to) / SAMPLE_DISTANCE) + 1);
        for (int i = 0; i <= parts; i++) {
            double share = (double) i / parts;
            data.add(from.getX() + share * (to.getX() - from.getX()), from.getY() + share * (to.getY() - from.getY()));
        }
    }

    private List<Point2D> line(Series series) {
        return lines.computeIfAbsent(
                series, each -> Polyline.of(each.points(), stage).thinned(stage));
    }
}
