// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.LineAttributes;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.graphics.Transform;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.ohmstead.load.drawing.NetworkDrawing;
import org.ohmstead.load.drawing.NetworkDrawing.Body;
import org.ohmstead.load.drawing.NetworkDrawing.Box;
import org.ohmstead.load.drawing.NetworkDrawing.Joint;
import org.ohmstead.load.drawing.NetworkDrawing.Label;
import org.ohmstead.load.drawing.NetworkDrawing.Place;
import org.ohmstead.load.drawing.NetworkDrawing.Role;
import org.ohmstead.load.drawing.NetworkDrawing.Wire;
import org.ohmstead.load.drawing.NetworkSvg;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** Paints a {@link NetworkDrawing} as large as the room allows; what would become too small to read is scrolled. */
final class DrawingCanvas extends ScrolledComposite {
    private static final double LARGEST_SCALE = 1.7;
    private static final double LEAST_SCALE = 0.85;
    private static final float POINTS_PER_INCH = 72;
    private static final double HEAT_TINT = 0.45;
    private static final float FRAME_WIDTH = 1.5f;

    private final Canvas canvas;
    private Optional<NetworkDrawing> drawing = Optional.empty();
    private String sentence = "";

    DrawingCanvas(Composite parent, String id) {
        super(parent, SWT.BORDER | SWT.H_SCROLL | SWT.V_SCROLL);
        setExpandHorizontal(true);
        setExpandVertical(true);
        setShowFocusedControl(true);
        canvas = Ids.name(new Canvas(this, SWT.DOUBLE_BUFFERED), id);
        setContent(canvas);
        canvas.addListener(SWT.Paint, this::paint);
        addListener(SWT.Resize, event -> size());
        canvas.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = spoken();
            }
        });
    }

    /** Shows a drawing. */
    void show(NetworkDrawing newDrawing) {
        drawing = Optional.of(newDrawing);
        size();
        canvas.redraw();
    }

    /** Shows a sentence instead: what to do so that there will be a drawing. */
    void showMessage(String newSentence) {
        drawing = Optional.empty();
        sentence = newSentence;
        size();
        canvas.redraw();
    }

    Optional<NetworkDrawing> drawing() {
        return drawing;
    }

    private String spoken() {
        return drawing.map(each -> Words.count("drawing.spoken", each.bodies().size()))
                .orElse(sentence);
    }

    private void size() {
        int width =
                drawing.map(each -> (int) Math.ceil(each.width() * LEAST_SCALE)).orElse(0);
        int height = drawing.map(each -> (int) Math.ceil(each.height() * LEAST_SCALE))
                .orElse(0);
        setMinSize(width, height);
    }

    private void paint(Event event) {
        GC gc = event.gc;
        Tones tones = Tones.of(this);
        gc.setAntialias(SWT.ON);
        gc.setTextAntialias(SWT.ON);
        Rectangle area = canvas.getClientArea();
        if (drawing.isEmpty()) {
            gc.setForeground(tones.mutedText());
            paintSentence(gc, area);
            return;
        }
        NetworkDrawing shown = drawing.get();
        double fit = Math.min((double) area.width / shown.width(), (double) area.height / shown.height());
        double scale = Math.max(LEAST_SCALE, Math.min(LARGEST_SCALE, fit));
        Transform transform = new Transform(gc.getDevice());
        Fonts fonts = new Fonts(this);
        try {
            transform.translate((float) Math.max(0, (area.width - scale * shown.width()) / 2), (float)
                    Math.max(0, (area.height - scale * shown.height()) / 2));
            transform.scale((float) scale, (float) scale);
            gc.setTransform(transform);
            new Painter(gc, tones, canvas.getBackground(), fonts).paint(shown);
            gc.setTransform(null);
        } finally {
            fonts.dispose();
            transform.dispose();
        }
    }

    private void paintSentence(GC gc, Rectangle area) {
        String wrapped = wrap(gc, sentence, area.width - 4 * Spacing.MARGIN);
        Point size = gc.textExtent(wrapped);
        gc.drawText(wrapped, (area.width - size.x) / 2, (area.height - size.y) / 2, true);
    }

    private static String wrap(GC gc, String text, int width) {
        StringBuilder out = new StringBuilder();
        String line = "";
        for (String word : text.split(" ")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && gc.textExtent(longer).x > width) {
                out.append(line).append('\n');
                line = word;
            } else {
                line = longer;
            }
        }
        return out.append(line).toString();
    }

    /** The control's font in the sizes of a drawing. */
    private static final class Fonts {
        private final DrawingCanvas owner;
        private final Map<Integer, Font> plain = new HashMap<>();
        private final Map<Integer, Font> bold = new HashMap<>();

        Fonts(DrawingCanvas owner) {
            this.owner = owner;
        }

        Font of(Label label) {
            boolean strong = label.role() == Role.JOINT;
            return (strong ? bold : plain).computeIfAbsent(label.fontPoints(), size -> make(size, strong));
        }

        private Font make(int pixels, boolean strong) {
            FontData data = owner.getFont().getFontData()[0];
            data.height = pixels * POINTS_PER_INCH / owner.getDisplay().getDPI().y;
            data.setStyle(strong ? SWT.BOLD : SWT.NORMAL);
            return new Font(owner.getDisplay(), data);
        }

        void dispose() {
            plain.values().forEach(Font::dispose);
            bold.values().forEach(Font::dispose);
        }
    }

    private static final class Painter {
        private final GC gc;
        private final Tones tones;
        private final Color ground;
        private final Fonts fonts;

        Painter(GC gc, Tones tones, Color ground, Fonts fonts) {
            this.gc = gc;
            this.tones = tones;
            this.ground = ground;
            this.fonts = fonts;
        }

        void paint(NetworkDrawing drawing) {
            gc.setForeground(tones.text());
            gc.setLineCap(SWT.CAP_ROUND);
            drawing.runs().forEach(this::paint);
            drawing.bodies().forEach(this::paint);
            gc.setBackground(tones.text());
            drawing.dots().forEach(dot -> circle(dot, NetworkDrawing.DOT_RADIUS, true));
            drawing.joints().stream().filter(Joint::terminal).forEach(joint -> {
                gc.setBackground(ground);
                circle(joint.place(), NetworkDrawing.TERMINAL_RADIUS, true);
                gc.setForeground(tones.text());
                gc.setLineAttributes(new LineAttributes(FRAME_WIDTH));
                circle(joint.place(), NetworkDrawing.TERMINAL_RADIUS, false);
            });
            drawing.labels().forEach(this::paint);
        }

        private void paint(Wire wire) {
            gc.setLineAttributes(new LineAttributes((float) NetworkSvg.strokePoints(wire)));
            gc.setLineCap(SWT.CAP_ROUND);
            gc.setLineJoin(SWT.JOIN_ROUND);
            int[] places = wire.places().stream()
                    .flatMapToInt(place -> IntStream.of(place.x(), place.y()))
                    .toArray();
            gc.drawPolyline(places);
        }

        private void paint(Body body) {
            Box box = body.box();
            gc.setBackground(ground);
            gc.fillRectangle(box.x(), box.y(), box.width(), box.height());
            gc.setBackground(mixed(tones.accent().getRGB(), ground.getRGB()));
            gc.fillRectangle(box.x(), box.y(), (int) Math.max(1, Math.round(box.width() * body.share())), box.height());
            gc.setForeground(tones.text());
            gc.setLineAttributes(new LineAttributes(FRAME_WIDTH));
            gc.drawRectangle(box.x(), box.y(), box.width(), box.height());
        }

        private static Color mixed(RGB one, RGB other) {
            return new Color(mixed(one.red, other.red), mixed(one.green, other.green), mixed(one.blue, other.blue));
        }

        private static int mixed(int one, int other) {
            return (int) Math.round(HEAT_TINT * one + (1 - HEAT_TINT) * other);
        }

        private void circle(Place place, int radius, boolean filled) {
            if (filled) {
                gc.fillOval(place.x() - radius, place.y() - radius, 2 * radius, 2 * radius);
            } else {
                gc.drawOval(place.x() - radius, place.y() - radius, 2 * radius, 2 * radius);
            }
        }

        private void paint(Label label) {
            gc.setFont(fonts.of(label));
            gc.setForeground(label.role() == Role.SHARE ? tones.mutedText() : tones.text());
            String text = label.role() == Role.ID ? label.text() : Numbers.inSentence(label.text());
            Point size = gc.textExtent(text);
            int top = label.baselineY()
                    - gc.getFontMetrics().getAscent()
                    - gc.getFontMetrics().getLeading();
            gc.drawText(text, label.centreX() - size.x / 2, top, true);
        }
    }
}
