// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.ChoiceField;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.TextField;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** What the technician chooses: the bench and its settings, who runs it, and what is measured at a step. */
final class BenchPane extends Composite {
    private static final Messages TEXTS = Messages.of(BenchPane.class);

    private static final int[] WEIGHTS = {54, 46};
    private static final int SENTENCE_WIDTH = 240;

    private final RunDesk runs;
    private final ScrolledComposite left;
    private final Composite bench;
    private final ChoiceField<String> driver;
    private final Label summary;
    private final TextField operator;
    private final SettingsForm settings;
    private final MeasuredPane measured;
    private List<String> drivers = List.of();
    private List<DriverInfo> shownDrivers = List.of();
    private Optional<Choices> shown = Optional.empty();

    BenchPane(Composite parent, RunDesk runs) {
        super(parent, SWT.NONE);
        this.runs = runs;
        Slices slices = new Slices(this);
        Spacing.group(1).applyTo(this);
        SashForm sash = new SashForm(this, SWT.HORIZONTAL | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(sash);
        left = scrolled(sash);
        bench = page(left);
        FormSection top = new FormSection(bench, "console.bench", "");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(top);
        driver = top.choice("driver", TEXTS.text("bench.driver"), List.of(), this::driverWords);
        driver.onCommit(this::choose);
        operator = top.text("operator", TEXTS.text("bench.operator"));
        operator.setHint(TEXTS.text("bench.operatorHint"));
        operator.onCommit(name -> runs.choose(choices -> choices.withOperator(name)));
        summary = Ids.name(new Label(bench, SWT.WRAP), "console.bench.summary");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(SENTENCE_WIDTH, SWT.DEFAULT)
                .applyTo(summary);
        settings = new SettingsForm(bench, "console.bench.setting", slices, this::fit);
        measured = new MeasuredPane(sash, runs, slices);
        sash.setWeights(WEIGHTS);
        left.addListener(SWT.Resize, event -> fit());
    }

    static ScrolledComposite scrolled(Composite parent) {
        ScrolledComposite scrolled = new ScrolledComposite(parent, SWT.V_SCROLL);
        scrolled.setExpandHorizontal(true);
        scrolled.setExpandVertical(true);
        return scrolled;
    }

    static Composite page(ScrolledComposite scrolled) {
        Composite page = new Composite(scrolled, SWT.NONE);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(page);
        scrolled.setContent(page);
        scrolled.setShowFocusedControl(true);
        return page;
    }

    private void fit() {
        int width = left.getClientArea().width;
        left.setMinSize(bench.computeSize(Math.max(1, width), SWT.DEFAULT));
    }

    private String driverWords(String id) {
        if (id.isEmpty()) {
            return TEXTS.text("bench.chooseOne");
        }
        return info(id).map(DriverInfo::name).orElse(TEXTS.text("bench.notThere", id));
    }

    private Optional<DriverInfo> info(String id) {
        return runs.catalog().drivers().stream()
                .filter(info -> info.id().equals(id))
                .findFirst();
    }

    private void choose(String id) {
        if (!id.equals(runs.choices().driverId())) {
            runs.choose(choices -> choices.withDriver(id, runs.chosen().settings(id)));
        }
    }

    void refresh(Optional<ItemRow> chosen) {
        Choices choices = runs.choices();
        List<DriverInfo> infos = runs.catalog().drivers();
        boolean fixed = runs.running() || runs.halted();
        driver.setReadOnly(fixed);
        if (!infos.equals(shownDrivers) || shown.filter(choices::equals).isEmpty()) {
            shownDrivers = infos;
            shown = Optional.of(choices);
            fill(choices, infos);
        }
        measured.refresh(chosen);
    }

    private void fill(Choices choices, List<DriverInfo> infos) {
        List<String> ids = new ArrayList<>(infos.stream().map(DriverInfo::id).toList());
        if (!ids.equals(drivers)) {
            drivers = List.copyOf(ids);
            driver.setChoices(drivers);
        }
        driver.setValue(choices.driverId());
        operator.setValue(choices.operator());
        Optional<DriverInfo> info = info(choices.driverId());
        summary.setForeground(Tones.of(this).mutedText());
        String words = info.map(DriverInfo::summary)
                .orElse(choices.driverId().isEmpty() ? TEXTS.text("bench.choose") : TEXTS.text("bench.gone"));
        if (!words.equals(summary.getText())) {
            summary.setText(words);
        }
        settings.show(
                info.map(DriverInfo::settings).orElse(List.of()),
                info.isPresent() ? choices.benchSettings() : Map.of(),
                (id, text) -> runs.choose(now -> now.withBenchSetting(id, text)));
        bench.layout(true, true);
        fit();
    }

    @Override
    public boolean setFocus() {
        if (driver.control().isDisposed()) {
            return false;
        }
        driver.focus();
        return true;
    }
}
