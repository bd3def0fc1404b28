// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.chart.internal;

import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.ohmstead.plot.Mark;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.Series;
import org.ohmstead.plot.Style;

/**
 * Draws the texts of the marks, and the names of lines that only their colour would tell apart, each where it disturbs
 * least.
 */
record TextLayer(Plot plot, Font font) implements Layer {
    private static final double PADDING = 2;
    private static final double WIDEST_NAME_SHARE = 0.35;
    private static final double LEADER_FROM = Look.MARK_SIZE * 1.3;

    @Override
    public void draw(Stage stage) {
        List<Series> lines = linesToName();
        if (plot.marks().isEmpty() && lines.isEmpty()) {
            return;
        }
        Graphics2D graphics = stage.graphics();
        graphics.setFont(font);
        LabelPlacement placement = new LabelPlacement(plot, stage);
        List<List<Rectangle2D>> choices = new ArrayList<>();
        List<Consumer<Rectangle2D>> drawings = new ArrayList<>();
        for (Mark mark : plot.marks()) {
            if (!mark.text().isBlank()) {
                Rectangle2D size = size(graphics, mark.text());
                choices.add(placement.choices(mark, size.getWidth(), size.getHeight()));
                drawings.add(place -> drawMarkText(stage, mark, place));
            }
        }
        for (Series line : lines) {
            Rectangle2D size = size(graphics, line.name());
            List<Rectangle2D> places = placement.choices(line, size.getWidth(), size.getHeight());
            if (size.getWidth() <= stage.area().getWidth() * WIDEST_NAME_SHARE && !places.isEmpty()) {
                choices.add(places);
                drawings.add(place ->
                        drawText(stage, line.name(), place, stage.look().tone(line.tone())));
            }
        }
        List<Rectangle2D> placed = placement.placed(choices);
        for (int i = 0; i < placed.size(); i++) {
            drawings.get(i).accept(placed.get(i));
        }
    }

    private List<Series> linesToName() {
        List<Series> lines = plot.series().stream()
                .filter(each -> each.style() == Style.LINE || each.style() == Style.DASHED_LINE)
                .filter(each -> !each.name().isBlank() && each.points().size() > 1)
                .toList();
        boolean alike = lines.stream().map(Series::style).distinct().count() < lines.size();
        return alike ? lines : List.of();
    }

    private void drawMarkText(Stage stage, Mark mark, Rectangle2D place) {
        Graphics2D graphics = stage.graphics();
        Color colour = stage.look().toneOrInk(mark.tone());
        if (mark instanceof Mark.Point point) {
            Point2D from = new Point2D.Double(stage.x(point.x()), stage.y(point.y()));
            double x = Math.max(place.getMinX(), Math.min(place.getMaxX(), from.getX()));
            double y = Math.max(place.getMinY(), Math.min(place.getMaxY(), from.getY()));
            double distance = from.distance(x, y);
            if (distance > LEADER_FROM) {
                double start = Look.MARK_SIZE * 0.75 / distance;
                graphics.setPaint(colour);
                graphics.setStroke(Look.LEADER_STROKE);
                graphics.draw(new Line2D.Double(
                        from.getX() + start * (x - from.getX()), from.getY() + start * (y - from.getY()), x, y));
            }
        }
        drawText(stage, mark.text(), place, colour);
    }

    private void drawText(Stage stage, String text, Rectangle2D place, Color colour) {
        Graphics2D graphics = stage.graphics();
        graphics.setPaint(stage.look().labelGround);
        graphics.fill(place);
        graphics.setPaint(colour);
        int ascent = graphics.getFontMetrics(font).getAscent();
        graphics.drawString(text, (float) (place.getX() + PADDING), (float) (place.getY() + ascent));
    }

    private Rectangle2D size(Graphics2D graphics, String text) {
        FontMetrics metrics = graphics.getFontMetrics(font);
        return new Rectangle2D.Double(
                0, 0, metrics.stringWidth(text) + 2 * PADDING, metrics.getAscent() + metrics.getDescent());
    }
}
