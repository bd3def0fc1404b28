// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.FontDescriptor;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.ohmstead.testlog.ui.internal.Details.Cell;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.table.CopiedTable;

/** Shows the details of an entry as text that can be read with the keyboard, selected and copied. */
final class DetailsPane {
    private static final int COLUMN_GAP = 18;
    private static final int LINE_SPACING = 2;

    private final StyledText text;
    private final Font bold;
    private final List<Place> places = new ArrayList<>();
    private Supplier<String> everything = () -> "";

    private record Place(int start, int end, Cell cell) {}

    DetailsPane(Composite parent) {
        text = Ids.name(
                new StyledText(parent, SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL | SWT.BORDER),
                "log.details");
        text.setMargins(Spacing.MARGIN, Spacing.GAP, Spacing.MARGIN, Spacing.GAP);
        text.setLineSpacing(LINE_SPACING);
        text.setAlwaysShowScrollBars(false);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(text);
        bold = FontDescriptor.createFrom(text.getFont()).setStyle(SWT.BOLD).createFont(text.getDisplay());
        text.addDisposeListener(event -> bold.dispose());
        text.addMouseMoveListener(event -> hover(text.getOffsetAtPoint(new Point(event.x, event.y))));
        text.addKeyListener(KeyListener.keyPressedAdapter(event -> {
            if (event.stateMask == SWT.MOD1 && event.keyCode == 'c' && text.getSelectionCount() == 0) {
                copyWhole(text.getCaretOffset());
            }
        }));
        addMenu();
    }

    StyledText control() {
        return text;
    }

    void showHint(String sentence) {
        places.clear();
        text.setText(sentence);
        text.setStyleRange(tinted(0, sentence.length(), Tones.of(text).mutedText(), null));
        text.setData("details", null);
    }

    /**
     * Shows details.
     *
     * @param details what is read
     * @param copied makes the text that is copied of everything
     */
    void show(Details details, Supplier<String> copied) {
        everything = copied;
        if (details.equals(text.getData("details"))) {
            // What is read or selected in it stays where it is.
            return;
        }
        places.clear();
        text.setRedraw(false);
        try {
            text.setText("");
            DetailsWriter writer = new DetailsWriter(text, bold, COLUMN_GAP);
            details.blocks().forEach(writer::write);
            writer.finish();
            writer.places().forEach(place -> places.add(new Place(place.start(), place.end(), place.cell())));
            text.setTopPixel(0);
            text.setData("details", details);
        } finally {
            text.setRedraw(true);
        }
    }

    static StyleRange tinted(int start, int length, Color tone, Font font) {
        StyleRange range = new StyleRange(start, length, tone, null);
        range.font = font;
        return range;
    }

    private void hover(int offset) {
        String wanted = "";
        for (Place place : places) {
            if (offset >= place.start() && offset < place.end()) {
                wanted = place.cell().hover();
            }
        }
        String now = text.getToolTipText() == null ? "" : text.getToolTipText();
        if (!now.equals(wanted)) {
            text.setToolTipText(wanted.isEmpty() ? null : wanted);
        }
    }

    /** A shortened hash is copied whole when nothing else is selected. */
    private void copyWhole(int offset) {
        places.stream()
                .filter(place -> offset >= place.start() && offset <= place.end())
                .map(place -> place.cell().copy().isEmpty()
                        ? place.cell().text()
                        : place.cell().copy())
                .findFirst()
                .ifPresent(this::toClipboard);
    }

    private void addMenu() {
        Menu menu = new Menu(text);
        MenuItem copy = item(menu, "&Copy selected text");
        copy.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> text.copy()));
        MenuItem whole = item(menu, "Copy &whole value");
        whole.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> copyWhole(text.getCaretOffset())));
        MenuItem all = item(menu, "Copy &everything");
        all.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
            if (text.getData("details") instanceof Details) {
                toClipboard(everything.get());
            }
        }));
        text.setMenu(menu);
    }

    private static MenuItem item(Menu menu, String words) {
        MenuItem item = new MenuItem(menu, SWT.PUSH);
        item.setText(words);
        return item;
    }

    private void toClipboard(String content) {
        CopiedTable.toClipboard(text.getDisplay(), content);
    }
}
