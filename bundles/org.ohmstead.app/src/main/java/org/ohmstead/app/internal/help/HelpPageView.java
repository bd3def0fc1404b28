// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.events.KeyEvent;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.TraverseEvent;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Cursor;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** Shows one help page: selectable, zoomable, with links for mouse and keyboard, in the colours of the theme. */
final class HelpPageView extends Composite {
    private static final int SMALLEST_PERCENT = 70;
    private static final int LARGEST_PERCENT = 250;
    private static final int STEP_PERCENT = 15;
    private static final int USUAL_PERCENT = 100;
    private static final int LONGEST_LINE = 700;
    private static final int FIRST_COLUMN_PARTS = 45;

    private final StyledText text;
    private final Consumer<String> follow;
    private final Cursor hand;
    private HelpFonts fonts;
    private HelpPage page;
    private HelpPageText shown;
    private List<Pattern> sought = List.of();
    private Tones tones;
    private int zoomPercent = USUAL_PERCENT;

    /**
     * Makes an empty one.
     *
     * @param follow called with the address of a link that the user follows
     */
    HelpPageView(Composite parent, Consumer<String> follow) {
        super(parent, SWT.NONE);
        this.follow = follow;
        setLayout(new FillLayout());
        text = Ids.name(new StyledText(this, SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL), "help.page");
        text.setLineSpacing(2);
        hand = getDisplay().getSystemCursor(SWT.CURSOR_HAND);
        text.addListener(SWT.MouseUp, event -> {
            if (event.button == 1 && text.getSelectionCount() == 0) {
                linkAt(new Point(event.x, event.y)).ifPresent(run -> follow.accept(run.href()));
            }
        });
        text.addListener(
                SWT.MouseMove,
                event -> text.setCursor(linkAt(new Point(event.x, event.y)).isPresent() ? hand : null));
        text.addListener(SWT.Paint, event -> {
            if (page != null && Tones.of(text).dark() != tones.dark()) {
                getDisplay().asyncExec(this::renderAgain);
            }
        });
        // Not the text's own resizing: its scroll bar comes and goes with the margins that are set here.
        addListener(SWT.Resize, event -> fitToWidth());
        text.addTraverseListener(this::traverse);
        text.addKeyListener(KeyListener.keyPressedAdapter(this::key));
        addDisposeListener(event -> {
            if (fonts != null) {
                fonts.dispose();
            }
        });
    }

    /** Shows a page from its top; marks what the search was for. */
    void show(HelpPage newPage, List<Pattern> newSought) {
        page = newPage;
        sought = List.copyOf(newSought);
        render();
        text.setTopPixel(0);
        text.setCaretOffset(0);
    }

    /** Shows a page that takes the place of the one before, where the reader was in it. */
    void showAgain(HelpPage newPage) {
        page = newPage;
        renderAgain();
    }

    /** Returns what is shown, as plain text. */
    String plainText() {
        return text.getText();
    }

    /** Returns the text widget, for focus and menus. */
    StyledText control() {
        return text;
    }

    /** Returns how large the text is, in percent of the usual size. */
    int zoomPercent() {
        return zoomPercent;
    }

    /** Makes the text larger (above 0), smaller (below 0), or of the usual size (0). */
    void zoom(int direction) {
        int wished = direction == 0 ? USUAL_PERCENT : zoomPercent + Integer.signum(direction) * STEP_PERCENT;
        zoomPercent = Math.max(SMALLEST_PERCENT, Math.min(LARGEST_PERCENT, wished));
        renderAgain();
    }

    private void renderAgain() {
        if (!isDisposed() && page != null) {
            int top = text.getTopIndex();
            int caret = text.getCaretOffset();
            render();
            text.setTopIndex(top);
            text.setCaretOffset(Math.min(caret, text.getCharCount()));
        }
    }

    private void render() {
        HelpFonts before = fonts;
        if (fonts == null || fonts.zoomPercent() != zoomPercent) {
            fonts = new HelpFonts(getFont(), zoomPercent);
        }
        tones = Tones.of(text);
        shown = new HelpPageText(page, sought);
        text.setRedraw(false);
        text.setText(shown.text());
        if (fonts != before) {
            text.setFont(fonts.of(HelpBlock.Kind.PARAGRAPH, HelpSpan.Look.PLAIN));
        }
        text.setStyleRanges(shown.runs().stream().map(this::style).toArray(StyleRange[]::new));
        fitToWidth();
        text.setRedraw(true);
        if (before != null && fonts != before) {
            before.dispose();
        }
    }

    private StyleRange style(HelpPageText.Run run) {
        StyleRange style = new StyleRange();
        style.start = run.start();
        style.length = run.length();
        style.font = fonts.of(run.kind(), run.look());
        if (!run.href().isEmpty()) {
            style.foreground = tones.accent();
            style.underline = true;
        } else if (run.kind() == HelpBlock.Kind.CAUTION && run.look() == HelpSpan.Look.STRONG) {
            style.foreground = tones.warning();
        }
        if (run.look() == HelpSpan.Look.KEY) {
            style.borderStyle = SWT.BORDER_SOLID;
            style.borderColor = tones.line();
        }
        if (run.found()) {
            style.background = mixed(tones.warning(), 0.30);
        }
        return style;
    }

    /** Sets margins, indents and columns, which depend on the width. */
    private void fitToWidth() {
        if (shown == null) {
            return;
        }
        int width = getClientArea().width - text.getVerticalBar().getSize().x;
        int longest = LONGEST_LINE * zoomPercent / USUAL_PERCENT;
        int margin = 2 * Spacing.MARGIN;
        int right = Math.max(margin, width - margin - longest);
        if (text.getRightMargin() != right || text.getLeftMargin() != margin) {
            text.setMargins(margin, Spacing.MARGIN, right, 0);
        }
        GC gc = new GC(text);
        gc.setFont(fonts.of(HelpBlock.Kind.PARAGRAPH, HelpSpan.Look.STRONG));
        int line = gc.getFontMetrics().getHeight();
        int[] columns = new int[shown.lines().size()];
        for (int i = 0; i < columns.length; i++) {
            HelpPageText.Line each = shown.lines().get(i);
            columns[i] = each.first() && each.table() >= 0 ? firstColumn(gc, each.table(), width - margin - right) : 0;
        }
        gc.dispose();
        int column = 0;
        for (int i = 0; i < columns.length; i++) {
            column = columns[i] > 0 ? columns[i] : column;
            layOut(i, shown.lines().get(i), line, column);
        }
    }

    private int firstColumn(GC gc, int table, int width) {
        int widest = 0;
        for (List<HelpPageText.Run> cell : shown.firstCells(table)) {
            int sum = 0;
            for (HelpPageText.Run run : cell) {
                gc.setFont(fonts.of(run.kind(), run.look()));
                sum += gc.textExtent(shown.words(run)).x;
            }
            widest = Math.max(widest, sum);
        }
        return Math.max(1, Math.min(widest + 2 * Spacing.MARGIN, width * FIRST_COLUMN_PARTS / 100));
    }

    private void layOut(int index, HelpPageText.Line line, int lineHeight, int column) {
        if (line.table() >= 0) {
            setTab(index, column);
            setIndents(index, 0, column, line.first() ? lineHeight / 2 : lineHeight / 4);
            return;
        }
        int indent = line.depth() > 0 ? (line.depth() - 1) * lineHeight * 3 / 2 : 0;
        boolean item = line.kind() == HelpBlock.Kind.ITEM;
        int hanging = indent + (item ? lineHeight * 3 / 2 : 0);
        if (item) {
            setTab(index, hanging);
        }
        setIndents(index, indent, hanging, index == 0 ? 0 : space(line.kind(), lineHeight));
        if (line.kind() == HelpBlock.Kind.CAUTION) {
            text.setLineBackground(index, 1, mixed(tones.warning(), 0.10));
        }
    }

    /** Each of these makes the widget measure the line again, so it is only told what changes. */
    private void setIndents(int index, int indent, int hanging, int above) {
        if (text.getLineIndent(index) != indent) {
            text.setLineIndent(index, 1, indent);
        }
        if (text.getLineWrapIndent(index) != hanging) {
            text.setLineWrapIndent(index, 1, hanging);
        }
        if (text.getLineVerticalIndent(index) != above) {
            text.setLineVerticalIndent(index, above);
        }
    }

    private void setTab(int index, int stop) {
        int[] stops = text.getLineTabStops(index);
        if (stops == null || stops.length != 1 || stops[0] != stop) {
            text.setLineTabStops(index, 1, new int[] {stop});
        }
    }

    private static int space(HelpBlock.Kind kind, int lineHeight) {
        return switch (kind) {
            case TITLE -> lineHeight;
            case HEADING -> lineHeight * 9 / 10;
            case SUBHEADING -> lineHeight * 7 / 10;
            case PARAGRAPH, CAUTION -> lineHeight / 2;
            case ITEM -> lineHeight / 3;
        };
    }

    private Color mixed(Color tone, double share) {
        Color ground = text.getBackground();
        return new Color(
                mixed(tone.getRed(), ground.getRed(), share),
                mixed(tone.getGreen(), ground.getGreen(), share),
                mixed(tone.getBlue(), ground.getBlue(), share));
    }

    private static int mixed(int tone, int ground, double share) {
        return (int) Math.round(tone * share + ground * (1 - share));
    }

    private Optional<HelpPageText.Run> linkAt(Point point) {
        int offset = shown == null ? -1 : text.getOffsetAtPoint(point);
        return offset < 0
                ? Optional.empty()
                : links().stream()
                        .filter(run -> run.start() <= offset && offset < run.end())
                        .findFirst();
    }

    private List<HelpPageText.Run> links() {
        return shown == null ? List.of() : shown.links();
    }

    /** Tab goes from link to link, and out of the page after the last. */
    private void traverse(TraverseEvent event) {
        boolean forward = event.detail == SWT.TRAVERSE_TAB_NEXT;
        if (!forward && event.detail != SWT.TRAVERSE_TAB_PREVIOUS) {
            return;
        }
        Point selection = text.getSelection();
        Optional<HelpPageText.Run> next = forward
                ? links().stream()
                        .filter(run ->
                                run.start() >= selection.y && !(run.start() == selection.x && run.end() == selection.y))
                        .findFirst()
                : links().stream().filter(run -> run.end() <= selection.x).reduce((one, other) -> other);
        event.doit = next.isEmpty();
        next.ifPresent(run -> {
            text.setSelection(run.start(), run.end());
            text.showSelection();
        });
    }

    private void key(KeyEvent event) {
        if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR) {
            Point selection = text.getSelection();
            links().stream()
                    .filter(run -> run.start() <= selection.x && selection.x < run.end())
                    .findFirst()
                    .ifPresent(run -> follow.accept(run.href()));
        }
    }
}
