// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.layout.RowData;
import org.eclipse.swt.layout.RowLayout;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.PaperSize;
import org.ohmstead.model.SheetDesign;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;

/** The line that says in which form the sheet is shown and published: design, paper and language. It takes two lines in a narrow view. */
final class ChoiceBar {
    private static final List<SheetDesign> DESIGNS = List.of(SheetDesign.values());
    private static final List<PaperSize> PAPERS = List.of(PaperSize.values());

    private final Composite bar;
    private final Consumer<SheetChoice> chosen;
    private final List<Locale> languages = SheetChoice.languages();
    private SheetChoice choice;
    private Combo design;
    private Combo paper;
    private Combo language;

    /**
     * Makes it empty; {@link #fill} makes its parts.
     *
     * @param parent where it stands
     * @param start what is chosen at first
     * @param chosen hears what the user chooses
     */
    ChoiceBar(Composite parent, SheetChoice start, Consumer<SheetChoice> chosen) {
        this.choice = start;
        this.chosen = chosen;
        bar = Ids.name(new Composite(parent, SWT.NONE), "sheet.choice");
        RowLayout rows = new RowLayout(SWT.HORIZONTAL);
        rows.center = true;
        rows.marginLeft = 0;
        rows.marginRight = 0;
        rows.marginTop = 0;
        rows.marginBottom = 0;
        rows.spacing = Spacing.GAP;
        bar.setLayout(rows);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
    }

    /** Makes the parts. */
    void fill() {
        design = combo("design", DESIGNS, each -> Texts.say("choice.design." + each), SheetChoice::withDesign);
        paper = combo("paper", PAPERS, each -> Texts.say("choice.paper." + each), SheetChoice::withPaper);
        // Each language by the name that its speakers give it.
        language = combo("language", languages, each -> each.getDisplayLanguage(each), SheetChoice::withLanguage);
        update();
    }

    /** Returns this choice with one part of it changed. */
    private interface Change<T> {
        SheetChoice apply(SheetChoice before, T value);
    }

    private <T> Combo combo(String name, List<T> values, Function<T, String> words, Change<T> change) {
        Composite pair = new Composite(bar, SWT.NONE);
        pair.setLayoutData(new RowData());
        Spacing.tight(2).applyTo(pair);
        Label label = new Label(pair, SWT.NONE);
        label.setText(Texts.say("choice." + name));
        GridDataFactory.swtDefaults().applyTo(label);
        Combo combo = Ids.name(new Combo(pair, SWT.DROP_DOWN | SWT.READ_ONLY), "sheet.choice." + name);
        values.forEach(value -> combo.add(words.apply(value)));
        combo.setToolTipText(Texts.say("choice." + name + ".hint"));
        combo.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = Texts.say("choice." + name);
            }
        });
        combo.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
            choice = change.apply(choice, values.get(combo.getSelectionIndex()));
            chosen.accept(choice);
        }));
        return combo;
    }

    SheetChoice choice() {
        return choice;
    }

    /** Shows another choice; nobody hears of it. */
    void show(SheetChoice other) {
        choice = other;
        update();
    }

    private void update() {
        if (language == null) {
            return;
        }
        design.select(DESIGNS.indexOf(choice.design()));
        paper.select(PAPERS.indexOf(choice.paper()));
        for (int index = 0; index < languages.size(); index++) {
            if (SheetChoice.same(languages.get(index), choice.language())) {
                language.select(index);
            }
        }
    }

    void allow(boolean allowed) {
        if (language != null) {
            design.setEnabled(allowed);
            paper.setEnabled(allowed);
            language.setEnabled(allowed);
        }
    }
}
