// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/**
 * A page of headings, paragraphs and whatever stands between, that scrolls when there is not room for all. Breaking running text into lines
 * takes some milliseconds each; so the parts are put into their places one in each turn of the event loop.
 */
final class AuditPage {
    private static final int LEAST_WIDTH = 260;
    private static final int MOST_WIDTH = 860;

    private final ScrolledComposite scrolled;
    private final Composite page;
    private final Font bold;
    private final List<Label> headings = new ArrayList<>();
    private final Slices placing;

    AuditPage(Composite parent) {
        scrolled = Ids.name(new ScrolledComposite(parent, SWT.V_SCROLL), "audit.page");
        scrolled.setExpandHorizontal(true);
        scrolled.setExpandVertical(true);
        // A bar that came and went would change the width, and all running text would be broken into lines once more.
        scrolled.setAlwaysShowScrollBars(true);
        page = new Composite(scrolled, SWT.NONE);
        placing = new Slices(page);
        scrolled.setContent(page);
        bold = FontDescriptor.createFrom(page.getFont()).setStyle(SWT.BOLD).createFont(page.getDisplay());
        page.addDisposeListener(event -> bold.dispose());
        scrolled.addListener(SWT.Resize, event -> measure());
        scrolled.getVerticalBar().setIncrement(4 * Spacing.MARGIN);
    }

    ScrolledComposite control() {
        return scrolled;
    }

    Composite content() {
        return page;
    }

    void heading(String words) {
        Label label = new Label(page, SWT.NONE);
        label.setText(words);
        label.setFont(bold);
        headings.add(label);
        GridDataFactory.fillDefaults()
                .indent(0, headings.size() == 1 ? 0 : Spacing.GAP)
                .applyTo(label);
        recolour();
    }

    /** Adds running text, which can be changed later. */
    Label paragraph(String id, String words) {
        Label label = Ids.name(new Label(page, SWT.WRAP), id);
        label.setText(words.replace("&", "&&"));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(LEAST_WIDTH, SWT.DEFAULT)
                .applyTo(label);
        return label;
    }

    /** Adds sentences, each after a dot. */
    void list(List<String> sentences) {
        for (String sentence : sentences) {
            Composite line = row(2);
            Label dot = new Label(line, SWT.NONE);
            dot.setText("\u2022");
            GridDataFactory.fillDefaults().align(SWT.BEGINNING, SWT.BEGINNING).applyTo(dot);
            Label words = new Label(line, SWT.WRAP);
            words.setText(sentence.replace("&", "&&"));
            GridDataFactory.fillDefaults()
                    .grab(true, false)
                    .hint(LEAST_WIDTH, SWT.DEFAULT)
                    .applyTo(words);
        }
    }

    /** Adds a row for so many things that stand beside each other. */
    Composite row(int columns) {
        Composite row = new Composite(page, SWT.NONE);
        Spacing.group(columns).applyTo(row);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(row);
        return row;
    }

    static Button button(Composite row, String words, String id) {
        Button button = Ids.name(new Button(row, SWT.PUSH), id);
        button.setText(words);
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(button);
        return button;
    }

    /** Colours the headings as the theme has it now. */
    void recolour() {
        headings.forEach(label -> label.setForeground(Tones.of(label).accent()));
    }

    /** Puts all parts into their places, soon, for the width that there is then; lines too long to read are not made. */
    void measure() {
        placing.clear();
        placing.add(() -> {
            int width = scrolled.getClientArea().width - 2 * Spacing.MARGIN;
            if (width >= LEAST_WIDTH) { // else not laid out yet, or too narrow to read anything
                place(page.getChildren(), 0, Spacing.MARGIN, Math.min(width, MOST_WIDTH));
            }
        });
    }

    /** Puts the next part that is shown below those before it, and has the one after it follow. */
    private void place(Control[] parts, int next, int top, int width) {
        int at = next;
        while (at < parts.length && grid(parts[at]).exclude) {
            at++;
        }
        if (at == parts.length) {
            scrolled.setMinHeight(top - Spacing.GAP + Spacing.MARGIN);
            return;
        }
        Control part = parts[at];
        GridData grid = grid(part);
        int height = part.computeSize(width, grid.heightHint).y;
        int partWidth =
                grid.grabExcessHorizontalSpace ? width : Math.min(width, part.computeSize(SWT.DEFAULT, SWT.DEFAULT).x);
        part.setBounds(Spacing.MARGIN, top + grid.verticalIndent, partWidth, height);
        int following = at + 1;
        int below = top + grid.verticalIndent + height + Spacing.GAP;
        placing.add(() -> place(parts, following, below, width));
    }

    private static GridData grid(Control part) {
        return (GridData) part.getLayoutData();
    }

    /** Shows or hides something on the page. */
    static void show(Control part, boolean visible) {
        part.setVisible(visible);
        grid(part).exclude = !visible;
    }
}
