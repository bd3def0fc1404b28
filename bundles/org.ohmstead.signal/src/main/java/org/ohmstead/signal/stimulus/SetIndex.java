// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.ohmstead.units.text.Messages;

/** The index of a set of files: as text, and as a page that needs nothing else and prints well. */
final class SetIndex {
    private static final int CAUTIONS = 4;
    private static final int LINE_WIDTH = 100;
    private static final String[] COLUMNS = {
        "number", "file", "signal", "frequency", "rms", "peak", "crest", "length", "purpose"
    };

    private static final String STYLE =
            """
            :root { color-scheme: light; }
            body { font: 11pt/1.45 system-ui, sans-serif; color: #1f2328; margin: 2rem auto; max-width: 70rem; padding: 0 1rem; }
            h1 { font-size: 1.5rem; margin: 0 0 .3rem; }
            .caution { border: 2px solid #b3261e; border-radius: 4px; padding: .5rem 1rem; margin: 1rem 0; break-inside: avoid; }
            .caution h2 { color: #b3261e; font-size: 1.05rem; margin: 0; }
            .caution ul { margin: .3rem 0; padding-left: 1.2rem; }
            .wide { overflow-x: auto; }
            table { border-collapse: collapse; width: 100%; font-size: .9rem; }
            th { text-align: left; border-bottom: 2px solid #5a6169; vertical-align: bottom; }
            td { border-bottom: 1px solid #c9cdd2; vertical-align: top; }
            th, td { padding: .3rem .5rem; }
            .n { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
            .f { white-space: nowrap; font-weight: 600; }
            tr { break-inside: avoid; }
            @page { margin: 14mm; size: landscape; }
            @media print { body { margin: 0; max-width: none; font-size: 9.5pt; } }
            """;

    private final SignalSet set;
    private final List<SignalFile> files;
    private final SignalSet.Making making;
    private final Messages messages;

    SetIndex(SignalSet set, List<SignalFile> files, SignalSet.Making making, Locale locale) {
        this.set = set;
        this.files = files;
        this.making = making;
        this.messages = Messages.of(SetIndex.class, locale);
    }

    private String format(String pattern, Object... values) {
        return String.format(messages.locale(), pattern, values);
    }

    private List<String> row(int index) {
        SignalFile file = files.get(index);
        StimulusFacts facts = file.stimulus().facts();
        List<String> cells = new ArrayList<>();
        cells.add(format("%02d", index + 1));
        cells.add(set.fileName(index));
        cells.add(messages.text(
                "kind." + Descriptions.kind(set.items().get(index).signal()).id()));
        cells.add(frequency(facts.frequenciesHz(), set.items().get(index).signal()));
        cells.add(format("%.2f dBFS", facts.rmsDbfs()));
        cells.add(format("%.2f dBFS", facts.peakDbfs()));
        cells.add(format("%.2f dB", facts.crestFactorDb()));
        cells.add(format("%.1f s", (double) file.frames() / making.sampleRateHz()));
        String key = "set.item." + set.items().get(index).name();
        String purpose = messages.has(key)
                ? messages.text(key)
                : messages.text("kind."
                        + Descriptions.kind(set.items().get(index).signal()).id() + ".purpose");
        cells.add(file.marked() ? purpose + " (" + messages.text("set.marked") + ")" : purpose);
        return cells;
    }

    private String frequency(List<Double> hertz, TestSignal signal) {
        if (hertz.size() == 1) {
            return hertz(hertz.get(0));
        }
        String first = hertz(hertz.get(0));
        String last = hertz(hertz.get(hertz.size() - 1));
        if (signal instanceof TestSignal.TwoTone) {
            return first + " + " + last;
        }
        return hertz.size() == 2
                ? messages.text("set.range", first, last)
                : messages.text("set.several", hertz.size(), first, last);
    }

    private String hertz(double value) {
        String text = value < 1000 ? format("%.2f", value) : format("%.3f", value / 1000);
        String point = text.contains(",") ? "," : ".";
        String plain = text.replaceAll("0+$", "");
        plain = plain.endsWith(point) ? plain.substring(0, plain.length() - 1) : plain;
        return plain + (value < 1000 ? " Hz" : " kHz");
    }

    private List<String> sentences() {
        String bits = making.format().floating()
                ? messages.text("set.format.floating")
                : messages.text(
                        "set.format.integer", Integer.toString(making.format().bits()));
        List<String> sentences = new ArrayList<>();
        sentences.add(messages.text(
                "set.made",
                Integer.toString(files.size()),
                Integer.toString(making.sampleRateHz()),
                bits,
                messages.text("set.channels." + making.channels().name())));
        sentences.add(messages.text("set.levels"));
        sentences.add(messages.text("set.overlap", 0 - set.overlapDb()));
        sentences.add(messages.text("set.repeat"));
        return sentences;
    }

    /** Returns the index as text, with lines of at most 100 characters but for the table. */
    String text() {
        StringBuilder text = new StringBuilder();
        line(text, messages.text("set.title"));
        line(text, "=".repeat(messages.text("set.title").length()));
        line(text, "");
        for (int i = 0; i < CAUTIONS; i++) {
            String head = i == 0 ? messages.text("set.caution") + ": " : "";
            wrapped(text, head + messages.text("set.caution." + i));
        }
        line(text, "");
        sentences().forEach(sentence -> wrapped(text, sentence));
        line(text, "");
        for (int i = 0; i < files.size(); i++) {
            List<String> cells = row(i);
            line(text, cells.get(1));
            line(
                    text,
                    "    " + String.join("; ", cells.subList(2, 4)) + "; RMS " + cells.get(4) + "; "
                            + messages.text("set.column.peak") + " " + cells.get(5) + "; "
                            + messages.text("set.column.crest") + " " + cells.get(6) + "; " + cells.get(7));
            line(text, "    " + cells.get(8));
        }
        return text.toString();
    }

    private static void line(StringBuilder text, String line) {
        text.append(line).append('\n');
    }

    private static void wrapped(StringBuilder text, String sentences) {
        StringBuilder line = new StringBuilder();
        for (String word : sentences.split(" ")) {
            if (line.length() + word.length() + 1 > LINE_WIDTH) {
                line(text, line.toString());
                line.setLength(0);
            }
            line.append(line.length() > 0 ? " " : "").append(word);
        }
        line(text, line.toString());
    }

    /** Returns the index as a page. */
    String page() {
        StringBuilder page = new StringBuilder();
        line(page, "<!DOCTYPE html>");
        line(page, "<html lang=\"" + messages.locale().getLanguage() + "\"><head><meta charset=\"utf-8\">");
        line(page, "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">");
        line(
                page,
                "<title>" + escaped(messages.text("set.title")) + "</title><style>\n" + STYLE
                        + "</style></head><body>");
        line(page, "<h1>" + escaped(messages.text("set.title")) + "</h1>");
        line(page, "<div class=\"caution\"><h2>" + escaped(messages.text("set.caution")) + "</h2><ul>");
        for (int i = 0; i < CAUTIONS; i++) {
            line(page, "<li>" + escaped(messages.text("set.caution." + i)) + "</li>");
        }
        line(page, "</ul></div>");
        sentences().forEach(sentence -> line(page, "<p>" + escaped(sentence) + "</p>"));
        line(page, "<div class=\"wide\"><table><thead><tr>");
        for (String column : COLUMNS) {
            line(page, "<th" + style(column) + ">" + escaped(messages.text("set.column." + column)) + "</th>");
        }
        line(page, "</tr></thead><tbody>");
        for (int i = 0; i < files.size(); i++) {
            List<String> cells = row(i);
            page.append("<tr>");
            for (int c = 0; c < COLUMNS.length; c++) {
                page.append("<td")
                        .append(style(COLUMNS[c]))
                        .append('>')
                        .append(escaped(cells.get(c)))
                        .append("</td>");
            }
            line(page, "</tr>");
        }
        line(page, "</tbody></table></div></body></html>");
        return page.toString();
    }

    private static String style(String column) {
        return switch (column) {
            case "signal", "frequency", "purpose" -> "";
            case "file" -> " class=\"f\"";
            default -> " class=\"n\"";
        };
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
