// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.ProgressBar;
import org.ohmstead.measure.engine.ProgressView;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** What a run does: how far it is, the levels that were tried, the newest wave and its spectrum; or how long it still rests. */
final class RunPane extends Composite {
    private static final Messages TEXTS = Messages.of(RunPane.class);

    private static final int PARTS = 1000;
    private static final double LARGE = 2.2;
    private static final int[] WEIGHTS = {36, 32, 32};

    private final ProgressBar bar;
    private final Label what;
    private final Composite resting;
    private final Label countdown;
    private final Slices slices;
    private final ChartCanvas search;
    private final ChartCanvas wave;
    private final ChartCanvas spectrum;
    private Optional<SearchCourse> shownCourse = Optional.empty();
    private Optional<AcquisitionLook> shownLook = Optional.empty();

    RunPane(Composite parent, Runnable goOnNow) {
        super(parent, SWT.NONE);
        slices = new Slices(this);
        Spacing.group(1).margins(0, Spacing.TIGHT).spacing(0, Spacing.TIGHT).applyTo(this);
        Composite top = new Composite(this, SWT.NONE);
        Spacing.group(2).applyTo(top);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(top);
        bar = Ids.name(new ProgressBar(top, SWT.HORIZONTAL), "console.progress");
        bar.setMaximum(PARTS);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(bar);
        what = Ids.name(new Label(top, SWT.RIGHT), "console.what");
        GridDataFactory.fillDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .hint(260, SWT.DEFAULT)
                .applyTo(what);
        resting = new Composite(this, SWT.NONE);
        Spacing.group(2).applyTo(resting);
        GridDataFactory.fillDefaults().grab(true, false).exclude(true).applyTo(resting);
        countdown = Ids.name(new Label(resting, SWT.NONE), "console.rest");
        countdown.setFont(new BigFonts(this).times(LARGE, true));
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .align(SWT.FILL, SWT.CENTER)
                .applyTo(countdown);
        Button go = Ids.name(new Button(resting, SWT.PUSH), "console.rest.go");
        go.setText(TEXTS.text("live.goOn"));
        go.setToolTipText(TEXTS.text("live.goOnHint"));
        go.addListener(SWT.Selection, event -> goOnNow.run());
        resting.setVisible(false);
        SashForm charts = new SashForm(this, SWT.HORIZONTAL | SWT.SMOOTH);
        charts.setSashWidth(Spacing.TIGHT);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(charts);
        search = chart(charts, "console.search", TEXTS.text("live.noLevels"));
        wave = chart(charts, "console.wave", TEXTS.text("live.noWave"));
        spectrum = chart(charts, "console.spectrum", TEXTS.text("live.noSpectrum"));
        charts.setWeights(WEIGHTS);
    }

    private static ChartCanvas chart(Composite parent, String id, String message) {
        ChartCanvas chart = Ids.name(new ChartCanvas(parent, SWT.NONE), id);
        chart.showMessage(message);
        return chart;
    }

    void refresh(RunDesk runs) {
        ReadOutStyle style = new ReadOutStyle(Numbers.decimalComma(), ReadOutStyle.USUAL.coverage());
        List.of(search, wave, spectrum).forEach(chart -> chart.setReadOutStyle(style));
        RunProgress progress = runs.course().progress();
        boolean rests = runs.course().rest().isPresent();
        double ratio = rests ? 0 : progress.view().map(ProgressView::doneRatio).orElse(0.0);
        int parts = (int) Math.round(PARTS * ratio);
        if (bar.getSelection() != parts) {
            bar.setSelection(parts);
        }
        String words = rests ? "" : words(runs, progress);
        if (!words.equals(what.getText())) {
            what.setText(words);
            what.setToolTipText(words);
        }
        showRest(runs.course().rest());
        if (shownCourse.filter(progress.course()::equals).isEmpty()) {
            SearchCourse course = progress.course();
            shownCourse = Optional.of(course);
            slices.add(() -> show(course));
        }
        if (!progress.look().equals(shownLook)) {
            shownLook = progress.look();
            slices.add(() -> show(shownLook));
        }
    }

    private static String words(RunDesk runs, RunProgress progress) {
        String elapsed = progress.elapsed().map(RunWords::time).orElse("");
        if (!runs.running()) {
            return elapsed.isEmpty() ? "" : TEXTS.text("live.took", elapsed);
        }
        String doing = progress.view().map(ProgressView::what).orElse("");
        int recorded = progress.view().map(ProgressView::recordedCount).orElse(0);
        return (doing.isEmpty() ? "" : doing + "  \u00b7  ")
                + (recorded > 0 ? TEXTS.text("live.recorded", Integer.toString(recorded)) + "  \u00b7  " : "")
                + elapsed;
    }

    private void showRest(Optional<RunFeed.Resting> rest) {
        Duration left = rest.map(RunFeed.Resting::left).orElse(Duration.ZERO);
        if (rest.isPresent()) {
            countdown.setForeground(Tones.of(this).warning());
            countdown.setText(TEXTS.text("live.rests", RunWords.time(left.plusMillis(999))));
        }
        if (resting.getVisible() != rest.isPresent()) {
            resting.setVisible(rest.isPresent());
            ((GridData) resting.getLayoutData()).exclude = rest.isEmpty();
            layout(true, true);
        }
    }

    private void show(SearchCourse course) {
        if (course.count() > 0) {
            search.show(PlotSource.of(ConsolePlots.search(course)));
        } else {
            search.showMessage(TEXTS.text("live.noLevels"));
        }
    }

    private void show(Optional<AcquisitionLook> look) {
        if (look.isPresent() && !look.get().channels().isEmpty()) {
            wave.show(PlotSource.of(ConsolePlots.wave(look.get())));
            spectrum.show(PlotSource.of(ConsolePlots.spectrum(look.get())));
        } else {
            wave.showMessage(TEXTS.text("live.noWave"));
            spectrum.showMessage(TEXTS.text("live.noSpectrum"));
        }
    }

    @Override
    public boolean setFocus() {
        return !search.isDisposed() && search.setFocus();
    }
}
