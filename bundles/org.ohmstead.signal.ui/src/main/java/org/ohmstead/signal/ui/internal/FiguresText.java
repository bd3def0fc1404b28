// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.ArrayList;
import java.util.List;

/** The tables as lines of cells between tabs, as spreadsheets take them from the clipboard. */
public final class FiguresText {
    private FiguresText() {}

    public static String of(LoadedCapture capture, List<Figure> figures, List<HarmonicRow> harmonics) {
        List<String> lines = new ArrayList<>();
        lines.add(Texts.say("table.capture") + "\t" + plain(capture.order().title()));
        capture.order().sha256().ifPresent(hash -> lines.add("SHA-256\t" + hash));
        lines.add(Texts.say("table.format") + "\t" + plain(capture.formatText()));
        lines.add("");
        List<String> names =
                capture.channels().stream().map(LoadedChannel::name).toList();
        lines.add(Texts.say("table.figure") + "\t" + Texts.say("table.unit") + "\t" + String.join("\t", names));
        for (Figure figure : figures) {
            lines.add(figure.name() + "\t" + figure.unit() + "\t" + String.join("\t", figure.values()));
        }
        lines.add("");
        StringBuilder heading = new StringBuilder(Texts.say("table.order") + "\t" + Texts.say("table.frequency"));
        for (String name : names) {
            heading.append('\t').append(name).append(" (dB)\t").append(name).append(" (%)\t");
            heading.append(Texts.say("table.phase", name));
        }
        lines.add(heading.toString());
        for (HarmonicRow row : harmonics) {
            StringBuilder line = new StringBuilder(row.order() + "\t" + row.frequencyHz());
            for (int i = 0; i < names.size(); i++) {
                line.append('\t').append(row.levels().get(i));
                line.append('\t').append(row.percents().get(i));
                line.append('\t').append(row.phases().get(i));
            }
            lines.add(line.toString());
        }
        return String.join("\n", lines) + "\n";
    }

    private static String plain(String text) {
        return text.replaceAll("\\p{Cntrl}", " ");
    }
}
