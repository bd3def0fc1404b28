// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.drawing;

import java.util.Locale;
import java.util.stream.Collectors;
import org.ohmstead.load.drawing.NetworkDrawing.Body;
import org.ohmstead.load.drawing.NetworkDrawing.Box;
import org.ohmstead.load.drawing.NetworkDrawing.Joint;
import org.ohmstead.load.drawing.NetworkDrawing.Label;
import org.ohmstead.load.drawing.NetworkDrawing.Place;
import org.ohmstead.load.drawing.NetworkDrawing.Role;
import org.ohmstead.load.drawing.NetworkDrawing.Wire;
import org.ohmstead.units.text.Messages;

/**
 * Writes a drawing as SVG: a picture that stands by itself, with a title and a description for those who cannot see it. The bar in a
 * resistor is as long as its share of the power; a wire is the thicker the more current it carries.
 */
public final class NetworkSvg {
    private static final Messages TEXTS = Messages.of(NetworkSvg.class);

    /** The colours of a picture. */
    public enum Look {
        /** For white paper. */
        LIGHT("#ffffff", "#1f2328", "#5a6169", "#9cc9c4"),
        /** For a dark screen. */
        DARK("#1e2022", "#ecedee", "#b0b6bd", "#1f6a66");

        private final String ground;
        private final String ink;
        private final String muted;
        private final String heat;

        Look(String ground, String ink, String muted, String heat) {
            this.ground = ground;
            this.ink = ink;
            this.muted = muted;
            this.heat = heat;
        }
    }

    private static final int FIRST_PRINTABLE = 0x20;

    private NetworkSvg() {}

    /**
     * Returns a whole SVG document.
     *
     * @param drawing what to draw
     * @param look its colours
     */
    public static String write(NetworkDrawing drawing, Look look) {
        Checks.present(drawing, "drawing");
        Checks.present(look, "look");
        StringBuilder out = new StringBuilder();
        out.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n")
                .append(String.format(
                        Locale.ROOT,
                        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\""
                                + " role=\"img\" aria-labelledby=\"title desc\" font-family=\"sans-serif\">\n",
                        drawing.width(),
                        drawing.height(),
                        drawing.width(),
                        drawing.height()))
                .append("<title id=\"title\">")
                .append(escaped(title(drawing.bodies().size())))
                .append("</title>\n<desc id=\"desc\">")
                .append(escaped(description(drawing)))
                .append("</desc>\n");
        out.append(String.format(
                Locale.ROOT,
                "<rect width=\"%d\" height=\"%d\" fill=\"%s\"/>\n",
                drawing.width(),
                drawing.height(),
                look.ground));
        out.append(String.format(
                Locale.ROOT,
                "<g fill=\"none\" stroke=\"%s\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n",
                look.ink));
        drawing.runs().forEach(wire -> append(out, wire));
        out.append("</g>\n");
        drawing.bodies().forEach(body -> append(out, body, look));
        drawing.dots().forEach(dot -> circle(out, dot, NetworkDrawing.DOT_RADIUS, look.ink, look.ink));
        drawing.joints().stream()
                .filter(Joint::terminal)
                .forEach(joint -> circle(out, joint.place(), NetworkDrawing.TERMINAL_RADIUS, look.ground, look.ink));
        drawing.labels().forEach(label -> append(out, label, look));
        return out.append("</svg>\n").toString();
    }

    /** Returns what a wire's thickness is in points. */
    public static double strokePoints(Wire wire) {
        return 1 + 2 * wire.currentRatio();
    }

    private static String title(int resistors) {
        return TEXTS.text(resistors == 1 ? "drawing.title.one" : "drawing.title.many", Integer.toString(resistors));
    }

    private static String description(NetworkDrawing drawing) {
        String parts = drawing.labels().stream()
                .filter(label -> label.role() != Role.JOINT)
                .map(Label::text)
                .collect(Collectors.joining(", "));
        return TEXTS.text("drawing.description", parts);
    }

    private static void append(StringBuilder out, Wire wire) {
        String points =
                wire.places().stream().map(place -> place.x() + "," + place.y()).collect(Collectors.joining(" "));
        out.append(String.format(
                Locale.ROOT, "<polyline points=\"%s\" stroke-width=\"%.2f\"/>\n", points, strokePoints(wire)));
    }

    private static void append(StringBuilder out, Body body, Look look) {
        Box box = body.box();
        String frame = "<rect x=\"%d\" y=\"%d\" width=\"%.1f\" height=\"%d\" fill=\"%s\" stroke=\"%s\""
                + " stroke-width=\"%s\"/>\n";
        out.append(String.format(
                Locale.ROOT, frame, box.x(), box.y(), (double) box.width(), box.height(), look.ground, "none", "0"));
        out.append(String.format(
                Locale.ROOT,
                frame,
                box.x(),
                box.y(),
                box.width() * body.share(),
                box.height(),
                look.heat,
                "none",
                "0"));
        out.append(String.format(
                Locale.ROOT, frame, box.x(), box.y(), (double) box.width(), box.height(), "none", look.ink, "1.5"));
    }

    private static void circle(StringBuilder out, Place place, int radius, String fill, String stroke) {
        out.append(String.format(
                Locale.ROOT,
                "<circle cx=\"%d\" cy=\"%d\" r=\"%d\" fill=\"%s\" stroke=\"%s\" stroke-width=\"1.5\"/>\n",
                place.x(),
                place.y(),
                radius,
                fill,
                stroke));
    }

    private static void append(StringBuilder out, Label label, Look look) {
        boolean strong = label.role() == Role.JOINT;
        out.append(String.format(
                Locale.ROOT,
                "<text x=\"%d\" y=\"%d\" font-size=\"%d\" text-anchor=\"middle\" fill=\"%s\"%s>%s</text>\n",
                label.centreX(),
                label.baselineY(),
                label.fontPoints(),
                label.role() == Role.SHARE ? look.muted : look.ink,
                strong ? " font-weight=\"bold\"" : "",
                escaped(label.text())));
    }

    /** Escapes a text for XML 1.0, which has no place for control characters: they become spaces. */
    private static String escaped(String text) {
        StringBuilder out = new StringBuilder();
        text.codePoints().forEach(letter -> {
            switch (letter) {
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '&' -> out.append("&amp;");
                case '"' -> out.append("&quot;");
                default -> out.appendCodePoint(printable(letter) ? letter : ' ');
            }
        });
        return out.toString();
    }

    private static boolean printable(int letter) {
        boolean surrogate = letter >= Character.MIN_SURROGATE && letter <= Character.MAX_SURROGATE;
        return letter >= FIRST_PRINTABLE && !surrogate && letter != 0xFFFE && letter != 0xFFFF;
    }
}
