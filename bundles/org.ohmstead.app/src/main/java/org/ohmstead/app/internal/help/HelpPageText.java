// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.units.text.Messages;

/** A page as one text with runs and lines: what a text widget needs, but without one. */
final class HelpPageText {
    private static final Messages TEXTS = Messages.of(HelpPageText.class);

    private final StringBuilder text = new StringBuilder();
    private final List<Run> runs = new ArrayList<>();
    private final List<Line> lines = new ArrayList<>();
    private final List<Pattern> sought;
    private int tables;

    /**
     * A stretch of one look.
     *
     * @param start where it begins
     * @param length how long it is, above 0
     * @param kind the block that it is in
     * @param look how it is set
     * @param href where it leads, or empty
     * @param found whether the search was for it
     */
    record Run(int start, int length, HelpBlock.Kind kind, HelpSpan.Look look, String href, boolean found) {
        int end() {
            return start + length;
        }
    }

    /**
     * A line before wrapping.
     *
     * @param kind the block that it is
     * @param depth how deep it lies within lists
     * @param table the number of the table that it is a row of, or -1
     * @param first whether it is the table's first row, or no row at all
     */
    record Line(HelpBlock.Kind kind, int depth, int table, boolean first) {}

    HelpPageText(HelpPage page, List<Pattern> sought) {
        this.sought = List.copyOf(sought);
        for (HelpBlock block : page.blocks()) {
            if (block instanceof HelpBlock.Table table) {
                addTable(table);
            } else {
                addText((HelpBlock.Text) block);
            }
        }
    }

    String text() {
        return text.toString();
    }

    List<Run> runs() {
        return runs;
    }

    List<Line> lines() {
        return lines;
    }

    /** Returns the runs that lead somewhere. */
    List<Run> links() {
        return runs.stream().filter(run -> !run.href().isEmpty()).toList();
    }

    /** Returns the runs of each first cell of a table, up to the tab after it. */
    List<List<Run>> firstCells(int table) {
        List<List<Run>> cells = new ArrayList<>();
        String[] shown = text.toString().split("\n", -1);
        int start = 0;
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).table() == table) {
                int from = start;
                int to = start + shown[i].split("\t", 2)[0].length();
                cells.add(runs.stream()
                        .filter(run -> run.start() >= from && run.end() <= to)
                        .toList());
            }
            start += shown[i].length() + 1;
        }
        return cells;
    }

    /** Returns the characters of a run. */
    String words(Run run) {
        return text.substring(run.start(), run.end());
    }

    private void addText(HelpBlock.Text block) {
        startLine(new Line(block.kind(), block.depth(), -1, true));
        if (!block.marker().isEmpty()) {
            add(block.kind(), HelpSpan.plain(block.marker() + "\t"));
        }
        if (block.kind() == HelpBlock.Kind.CAUTION) {
            add(block.kind(), new HelpSpan(TEXTS.text("page.caution"), HelpSpan.Look.STRONG, ""));
            add(block.kind(), HelpSpan.plain(" "));
        }
        block.spans().forEach(span -> add(block.kind(), span));
    }

    private void addTable(HelpBlock.Table table) {
        boolean first = true;
        for (HelpBlock.Row row : table.rows()) {
            startLine(new Line(HelpBlock.Kind.PARAGRAPH, 0, tables, first));
            first = false;
            for (int column = 0; column < row.cells().size(); column++) {
                if (column > 0) {
                    add(HelpBlock.Kind.PARAGRAPH, HelpSpan.plain("\t"));
                }
                for (HelpSpan span : row.cells().get(column)) {
                    HelpSpan.Look look = row.header() ? HelpSpan.Look.STRONG : span.look();
                    add(HelpBlock.Kind.PARAGRAPH, new HelpSpan(span.text(), look, span.href()));
                }
            }
        }
        tables++;
    }

    private void startLine(Line line) {
        if (!lines.isEmpty()) {
            text.append('\n');
        }
        lines.add(line);
    }

    private void add(HelpBlock.Kind kind, HelpSpan span) {
        boolean[] found = new boolean[span.text().length()];
        for (Pattern word : kind == HelpBlock.Kind.TITLE ? List.<Pattern>of() : sought) {
            Matcher matcher = word.matcher(span.text());
            while (matcher.find()) {
                for (int i = matcher.start(); i < matcher.end(); i++) {
                    found[i] = true;
                }
            }
        }
        int from = 0;
        while (from < found.length) {
            int to = from + 1;
            while (to < found.length && found[to] == found[from]) {
                to++;
            }
            runs.add(new Run(text.length() + from, to - from, kind, span.look(), span.href(), found[from]));
            from = to;
        }
        text.append(span.text());
    }
}
