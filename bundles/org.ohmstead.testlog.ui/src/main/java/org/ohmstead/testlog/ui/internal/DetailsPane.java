// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
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
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.table.CopiedTable;

/** Shows the details of an entry as text that can be read with the keyboard, selected and copied. */
final class DetailsPane {
    private static final Messages TEXTS = Messages.of(DetailsPane.class);
    private static final int COLUMN_GAP = 18;
    private static final int LINE_SPACING = 2;
    private static final int STEPS_AT_ONCE = 12;

    private final StyledText text;
    private final Font bold;
    private final Slices filling;
    private final List<DetailsWriter.Place> places = new ArrayList<>();
    private boolean frozen;
    private Supplier<String> everything = () -> "";

    DetailsPane(Composite parent) {
        text = Ids.name(
                new StyledText(parent, SWT.MULTI | SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL | SWT.BORDER),
                "log.details");
        text.setMargins(Spacing.MARGIN, Spacing.GAP, Spacing.MARGIN, Spacing.GAP);
        text.setLineSpacing(LINE_SPACING);
        text.setAlwaysShowScrollBars(false);
        bold = FontDescriptor.createFrom(text.getFont()).setStyle(SWT.BOLD).createFont(text.getDisplay());
        text.addDisposeListener(event -> bold.dispose());
        filling = new Slices(text);
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
        filling.clear();
        places.clear();
        text.setText(sentence);
        text.setStyleRange(tinted(0, sentence.length(), Tones.of(text).mutedText(), null));
        text.setData("details", null);
        freeze(false);
    }

    /**
     * Shows details; what is in view stays until all of them are there, some turns of the event loop later.
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
        text.setData("details", details);
        freeze(true);
        DetailsWriter writer = new DetailsWriter(text, bold, COLUMN_GAP);
        details.blocks().forEach(writer::write);
        filling.clear();
        filling.add(() -> {
            places.clear();
            places.addAll(writer.places());
            writer.begin();
        });
        for (int left = writer.steps(); left > 0; left -= STEPS_AT_ONCE) {
            filling.add(() -> writer.layOut(STEPS_AT_ONCE));
        }
        filling.add(() -> {
            text.setTopPixel(0);
            freeze(false);
        });
    }

    private void freeze(boolean wanted) {
        if (frozen != wanted) {
            frozen = wanted;
            text.setRedraw(!wanted);
        }
    }

    static StyleRange tinted(int start, int length, Color tone, Font font) {
        StyleRange range = new StyleRange(start, length, tone, null);
        range.font = font;
        return range;
    }

    private void hover(int offset) {
        String wanted = "";
        for (DetailsWriter.Place place : places) {
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
        MenuItem copy = item(menu, TEXTS.text("details.copy.selected"));
        copy.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> text.copy()));
        MenuItem whole = item(menu, TEXTS.text("details.copy.whole"));
        whole.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> copyWhole(text.getCaretOffset())));
        MenuItem all = item(menu, TEXTS.text("details.copy.everything"));
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
