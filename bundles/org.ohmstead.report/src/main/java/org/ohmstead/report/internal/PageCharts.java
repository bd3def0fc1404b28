// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.render.DefaultObjectDrawerFactory;
import java.awt.Shape;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.ohmstead.plot.chart.ChartRenderer;
import org.ohmstead.report.SheetLogo;
import org.w3c.dom.Element;

/** Draws the object elements of the paged sheet, charts, verdict marks and the logo, as vectors with real text. */
final class PageCharts {
    private static final String PLOT = "application/x-ohmstead-plot";
    private static final String MARK = "application/x-ohmstead-mark";

    private static final String LOGO = "application/x-ohmstead-logo";

    private final Map<String, Chart> charts;
    private final Optional<SheetLogo> logo;
    private final ChartRenderer renderer;

    PageCharts(ChartBook book, Optional<SheetLogo> logo, Locale language) {
        this.logo = logo;
        renderer = new ChartRenderer(SheetFonts.forCharts(), language);
        charts = book.charts().stream().collect(Collectors.toMap(Chart::id, Function.identity()));
    }

    DefaultObjectDrawerFactory factory() {
        DefaultObjectDrawerFactory factory = new DefaultObjectDrawerFactory();
        factory.registerDrawer(
                PLOT,
                (element, x, y, width, height, device, context, dotsPerPixel) ->
                        drawPlot(named(element), device, Box.ofDots(x, y, width, height, dotsPerPixel)));
        factory.registerDrawer(
                MARK,
                (element, x, y, width, height, device, context, dotsPerPixel) ->
                        drawMark(named(element), device, Box.ofDots(x, y, width, height, dotsPerPixel)));
        factory.registerDrawer(
                LOGO,
                (element, x, y, width, height, device, context, dotsPerPixel) ->
                        drawLogo(device, Box.ofDots(x, y, width, height, dotsPerPixel)));
        return factory;
    }

    /** A place in dots and a size in CSS pixels, as the page layout wants them. */
    private record Box(float x, float y, float widthPixels, float heightPixels) {
        static Box ofDots(double x, double y, double width, double height, int dotsPerPixel) {
            return new Box((float) x, (float) y, (float) (width / dotsPerPixel), (float) (height / dotsPerPixel));
        }
    }

    private static String named(Element element) {
        return element.getAttribute("data");
    }

    private Map<Shape, String> drawPlot(String id, OutputDevice device, Box box) {
        Chart chart = charts.get(id);
        if (chart == null) {
            throw new IllegalArgumentException("id is '" + id + "'; it must be that of a chart of the sheet");
        }
        device.drawWithGraphics(
                box.x(),
                box.y(),
                box.widthPixels(),
                box.heightPixels(),
                graphics -> renderer.draw(chart.plot(), graphics, box.widthPixels(), box.heightPixels()));
        return Map.of();
    }

    private Map<Shape, String> drawLogo(OutputDevice device, Box box) {
        logo.ifPresent(shown -> device.drawWithGraphics(
                box.x(),
                box.y(),
                box.widthPixels(),
                box.heightPixels(),
                graphics -> shown.draw(graphics, box.widthPixels(), box.heightPixels())));
        return Map.of();
    }

    private static Map<Shape, String> drawMark(String name, OutputDevice device, Box box) {
        VerdictMark mark = VerdictMark.named(name);
        float side = Math.min(box.widthPixels(), box.heightPixels());
        device.drawWithGraphics(box.x(), box.y(), side, side, graphics -> mark.draw(graphics, side));
        return Map.of();
    }
}
