// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.plot.ui.ViewWindow;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;

/** Waveform and spectrum: side by side where there is room, one above the other where the view is narrow. */
public final class PlotsPane extends Composite {
    private static final int NARROW_BELOW = 900;
    /** How many times as wide as high the room must be for both to stand side by side whatever the width. */
    private static final double SHALLOW_FROM = 2.2;

    private static final double SAME_WINDOW_SHARE = 1e-6;

    private final SashForm sash;
    private final ChartCanvas waveChart;
    private final ChartCanvas spectrumChart;
    private final MarkedCursor waveCursor;
    private final MarkedCursor spectrumCursor;
    private final Button fundamental;
    private final Button cycles;
    private final Button whole;
    private final Combo reference;
    private Optional<LoadedCapture> capture = Optional.empty();
    private List<LoadedChannel> shown = List.of();
    private Optional<WavePlotSource> waves = Optional.empty();
    private Optional<SpectrumPlotSource> spectra = Optional.empty();
    /** The few cycles that were shown last; as long as the user leaves them, those of the next capture follow. */
    private Optional<ViewWindow> followed = Optional.empty();

    /** Makes an empty pane. */
    public PlotsPane(Composite parent) {
        super(parent, SWT.NONE);
        Spacing.tight(1).applyTo(this);
        sash = Ids.name(new SashForm(this, SWT.HORIZONTAL), "capture.plots");
        sash.setSashWidth(Spacing.GAP);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(sash);

        Composite left = side();
        Composite leftHead = head(left, Texts.say("plots.waveform"), 4);
        cycles = button(
                leftHead, SWT.PUSH, Texts.say("plots.cycles"), "capture.few-cycles", Texts.say("plots.cycles.hint"));
        whole = button(leftHead, SWT.PUSH, Texts.say("plots.whole"), "capture.whole", Texts.say("plots.whole.hint"));
        fundamental = button(
                leftHead,
                SWT.CHECK,
                Texts.say("plots.fundamental"),
                "capture.fundamental",
                Texts.say("plots.fundamental.hint"));
        waveChart = chart(left, "capture.waveform");
        waveCursor = new MarkedCursor(waveChart, cursorLabel(left, "capture.waveform.cursor"), this::showWaves);
        cycles.addListener(SWT.Selection, event -> showFewCycles());
        whole.addListener(SWT.Selection, event -> waveChart.resetZoom());
        fundamental.addListener(SWT.Selection, event -> showWaves());

        Composite right = side();
        Composite rightHead = head(right, Texts.say("plots.spectrum"), 2);
        reference = Ids.name(new Combo(rightHead, SWT.DROP_DOWN | SWT.READ_ONLY), "capture.reference");
        for (SpectrumPlotSource.Reference each : SpectrumPlotSource.Reference.values()) {
            reference.add(each.text());
        }
        reference.select(0);
        reference.setToolTipText(Texts.say("plots.reference.hint"));
        reference.addListener(SWT.Selection, event -> showSpectra(false));
        spectrumChart = chart(right, "capture.spectrum");
        spectrumCursor =
                new MarkedCursor(spectrumChart, cursorLabel(right, "capture.spectrum.cursor"), () -> showSpectra(true));
        addListener(SWT.Resize, event -> turnSash());
        enable(false);
        showDisplay();
    }

    private Composite side() {
        Composite side = new Composite(sash, SWT.NONE);
        Spacing.tight(1).applyTo(side);
        return side;
    }

    private static Composite head(Composite side, String title, int columns) {
        Composite head = new Composite(side, SWT.NONE);
        Spacing.group(columns).applyTo(head);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(head);
        Label label = new Label(head, SWT.NONE);
        label.setText(title);
        GridDataFactory.fillDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .grab(true, false)
                .applyTo(label);
        return head;
    }

    private static Button button(Composite head, int style, String text, String id, String hint) {
        Button button = Ids.name(new Button(head, style), id);
        button.setText(text);
        button.setToolTipText(hint);
        return button;
    }

    private static ChartCanvas chart(Composite side, String id) {
        ChartCanvas chart = Ids.name(new ChartCanvas(side, SWT.NONE), id);
        GridDataFactory.fillDefaults().grab(true, true).hint(120, 80).applyTo(chart);
        return chart;
    }

    private static Label cursorLabel(Composite side, String id) {
        Label label = Ids.name(new Label(side, SWT.NONE), id);
        GridDataFactory.fillDefaults().grab(true, false).hint(120, SWT.DEFAULT).applyTo(label);
        return label;
    }

    private void turnSash() {
        // Side by side as the rule; one above the other where that gives both a better shape.
        Rectangle room = getClientArea();
        int wanted = stacked(room.width, room.height) ? SWT.VERTICAL : SWT.HORIZONTAL;
        if (sash.getOrientation() != wanted) {
            sash.setOrientation(wanted);
        }
    }

    /** Returns whether in so much room the one stands above the other. */
    public static boolean stacked(int width, int height) {
        return width < NARROW_BELOW && width < SHALLOW_FROM * height;
    }

    private void enable(boolean on) {
        cycles.setEnabled(on && waves.flatMap(WavePlotSource::fewCycles).isPresent());
        whole.setEnabled(on);
        fundamental.setEnabled(on);
        reference.setEnabled(on);
    }

    /** Shows a sentence instead of plots. */
    public void showMessage(String sentence) {
        capture = Optional.empty();
        waves = Optional.empty();
        spectra = Optional.empty();
        followed = Optional.empty();
        waveChart.showMessage(sentence);
        spectrumChart.showMessage("");
        waveCursor.forget();
        spectrumCursor.forget();
        enable(false);
    }

    /**
     * Shows a capture.
     *
     * @param channels which of its channels
     * @param sameKind whether it belongs with the one before, so that the user's windows stay
     */
    public void show(LoadedCapture newCapture, List<LoadedChannel> channels, boolean sameKind) {
        boolean keep = sameKind && capture.isPresent();
        boolean follow = !keep || followed.isPresent() && nearly(followed, waveChart.window());
        boolean onlyChannels = keep && capture.get() == newCapture;
        capture = Optional.of(newCapture);
        shown = List.copyOf(channels);
        if (!keep) {
            waveCursor.forget();
            spectrumCursor.forget();
        }
        Optional<ViewWindow> before = waveChart.window();
        waves = Optional.of(waveSource());
        waveChart.show(waves.get(), keep);
        if (follow && !onlyChannels) {
            showFewCycles();
        } else if (keep) {
            before.ifPresent(waveChart::zoomTo);
        }
        showSpectra(keep);
        enable(true);
    }

    /** The chart may move the ends of a window by a rounding. */
    private static boolean nearly(Optional<ViewWindow> one, Optional<ViewWindow> other) {
        if (one.isEmpty() || other.isEmpty()) {
            return false;
        }
        double width = one.get().upperX() - one.get().lowerX();
        return Math.abs(one.get().lowerX() - other.get().lowerX()) < SAME_WINDOW_SHARE * width
                && Math.abs(one.get().upperX() - other.get().upperX()) < SAME_WINDOW_SHARE * width;
    }

    /** Writes what is read at the cursors as numbers are shown now. */
    public void showDisplay() {
        ReadOutStyle style = new ReadOutStyle(Numbers.decimalComma(), Coverage.words());
        waveChart.setReadOutStyle(style);
        spectrumChart.setReadOutStyle(style);
        waves.ifPresent(source -> waveCursor.readBy(source::readOut, source::difference));
        spectra.ifPresent(source -> spectrumCursor.readBy(source::readOut, source::difference));
    }

    private WavePlotSource waveSource() {
        return new WavePlotSource(capture.orElseThrow(), shown, fundamental.getSelection(), waveCursor.mark());
    }

    private void showFewCycles() {
        followed = waves.flatMap(WavePlotSource::fewCycles);
        followed.ifPresent(waveChart::zoomTo);
    }

    private void showWaves() {
        if (capture.isPresent()) {
            waves = Optional.of(waveSource());
            waveChart.show(waves.get(), true);
            waveCursor.readBy(waves.get()::readOut, waves.get()::difference);
        }
    }

    private void showSpectra(boolean keepWindow) {
        if (capture.isPresent()) {
            SpectrumPlotSource.Reference wanted = SpectrumPlotSource.Reference.values()[reference.getSelectionIndex()];
            spectra = Optional.of(new SpectrumPlotSource(capture.get(), shown, wanted, spectrumCursor.mark()));
            spectrumChart.show(spectra.get(), keepWindow);
            spectrumCursor.readBy(spectra.get()::readOut, spectra.get()::difference);
            waves.ifPresent(source -> waveCursor.readBy(source::readOut, source::difference));
        }
    }
}
