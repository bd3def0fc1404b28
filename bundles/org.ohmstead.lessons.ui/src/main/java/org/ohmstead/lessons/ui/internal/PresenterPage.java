// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.lessons.Picture;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.workbench.look.Coverage;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Tones;

/** The page of one step before a room, set as large as it fits; it never scrolls. */
final class PresenterPage {
    /** What the names of widgets begin with. */
    static final String PREFIX = "presenter.";

    /** The numbers along the axes of a chart are a little smaller than its font. */
    private static final double CHART_POINTS = 1.18 * PresenterType.LEAST_POINTS;

    private static final int GAP = 18;
    private static final double SHARE_ABOVE = 0.38;

    private final Composite place;
    private final LessonRun run;
    private final PresenterStep step;
    private final PresenterType type;
    private final Tones tones;
    private final Runnable shown;
    private final Slices sizes;
    private Optional<Composite> content = Optional.empty();
    private Optional<FiguresPane> figures = Optional.empty();
    private Optional<PredictionPane> prediction = Optional.empty();
    private Optional<ChartCanvas> chart = Optional.empty();
    private Optional<Label> settings = Optional.empty();
    private List<Block> blocks;
    private int points;

    /**
     * Makes the page. Sizes are tried until one fits, one in each turn of the event loop.
     *
     * @param place what it fills, of its final size
     * @param shown runs when a size was found
     */
    PresenterPage(Composite place, LessonRun run, PresenterStep step, PresenterType type, Tones tones, Runnable shown) {
        this.place = place;
        this.run = run;
        this.step = step;
        this.type = type;
        this.tones = tones;
        this.shown = shown;
        this.sizes = new Slices(place);
        blocks = step.blocks();
        sizes.add(() -> attempt(0));
    }

    PresenterStep step() {
        return step;
    }

    /** Returns where the prediction is made, on the page of the question. */
    Optional<PredictionPane> prediction() {
        return prediction;
    }

    /** Returns the size that the page is set in, in points at a height of 720 pixels. */
    int points() {
        return points;
    }

    private void attempt(int index) {
        int[] all = PresenterType.pagePoints();
        clear();
        points = all[index];
        Composite made = new Composite(place, SWT.NONE);
        made.setVisible(false);
        made.setBackground(tones.background());
        content = Optional.of(made);
        fill(made);
        int left = place.getClientArea().height - made.computeSize(width(), SWT.DEFAULT, true).y;
        boolean wide = made.computeSize(SWT.DEFAULT, SWT.DEFAULT, false).x > width();
        if ((left < 0 || wide) && index + 1 < all.length) {
            sizes.add(() -> attempt(index + 1));
            return;
        }
        // Words stand a little above the middle.
        if (!step.live() && left > 0 && made.getLayout() instanceof GridLayout grid) {
            grid.marginTop = (int) (SHARE_ABOVE * left);
        }
        sizes.add(() -> put(made));
    }

    /** What was measured keeps its sizes; to measure and to put into place would take too long for one event. */
    private void put(Composite made) {
        place.layout(false);
        made.setVisible(true);
        shown.run();
    }

    /** Returns whether a size was found. */
    boolean complete() {
        return sizes.done();
    }

    /** Returns the width that the page has beside the column of controls. */
    int width() {
        int all = place.getClientArea().width;
        return step.live() ? all - PresenterColumn.width(place) - type.pixels(2.0 * GAP) : all;
    }

    /** Returns what the page is made of. */
    Optional<Composite> control() {
        return content.filter(made -> !made.isDisposed());
    }

    private void clear() {
        content.ifPresent(Composite::dispose);
        figures = Optional.empty();
        prediction = Optional.empty();
        chart = Optional.empty();
        settings = Optional.empty();
    }

    private void fill(Composite parent) {
        switch (step.kind()) {
            case SETTINGS -> addFigures(parent, true);
            case PICTURE -> addPicture(parent);
            case FIGURES -> addFigures(parent, false);
            case QUESTION -> question(parent);
            default -> paragraphs(parent);
        }
    }

    private PaneStyle style(double size, double strongSize) {
        return new PaneStyle(
                PREFIX,
                Optional.of(type.font(size, false)),
                type.font(strongSize, true),
                Optional.of(tones.background()),
                Optional.of(tones.text()),
                true);
    }

    private void page(Composite parent) {
        GridLayoutFactory.fillDefaults()
                .spacing(type.pixels(2.0 * GAP), type.pixels(GAP))
                .applyTo(parent);
    }

    private void paragraphs(Composite parent) {
        page(parent);
        for (Block block : blocks) {
            Label label = Ids.name(new Label(parent, SWT.WRAP), PREFIX + "text");
            label.setText(Texts.plain(block.words()));
            double size = Math.max(
                    Math.min(points, PresenterType.LEAST_POINTS),
                    points * block.weight().size());
            label.setFont(type.font(size, block.weight().bold()));
            label.setBackground(tones.background());
            label.setForeground(block.weight().of(tones));
            GridDataFactory.fillDefaults()
                    .grab(true, false)
                    .hint(1, SWT.DEFAULT)
                    .applyTo(label);
        }
        if (step.kind() == PresenterStep.Kind.ANSWER) {
            Button again = style(PresenterType.LEAST_POINTS, points).named(new Button(parent, SWT.PUSH), "again");
            again.setText(Texts.say("flow.again"));
            again.addListener(SWT.Selection, event -> run.predictAgain());
            GridDataFactory.fillDefaults().align(SWT.BEGINNING, SWT.CENTER).applyTo(again);
        }
    }

    private void addFigures(Composite parent, boolean onlyGiven) {
        page(parent);
        FiguresPane pane = new FiguresPane(parent, style(points, points), onlyGiven);
        GridDataFactory.fillDefaults()
                .align(SWT.FILL, SWT.BEGINNING)
                .grab(true, true)
                .applyTo(pane.control());
        pane.show(run);
        figures = Optional.of(pane);
    }

    private void addPicture(Composite parent) {
        GridLayoutFactory.fillDefaults().spacing(0, type.pixels(GAP) / 2).applyTo(parent);
        Label title = style(PresenterType.LEAST_POINTS, PresenterType.LEAST_POINTS + 2.0)
                .dressStrong(new Label(parent, SWT.WRAP));
        Ids.name(title, PREFIX + "picture.title");
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(title);
        ChartCanvas canvas = Ids.name(new ChartCanvas(parent, SWT.NONE), PREFIX + "picture");
        canvas.setBackground(tones.background());
        canvas.setFont(type.font(CHART_POINTS, false));
        canvas.setReadOutStyle(new ReadOutStyle(Numbers.decimalComma(), Coverage.words()));
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(canvas);
        chart = Optional.of(canvas);
        step.picture(run).ifPresent(picture -> showPicture(picture, title, canvas));
    }

    private void showPicture(Picture picture, Label title, ChartCanvas canvas) {
        Plot plot = picture.plot();
        title.setText(Texts.plain(plot.title()));
        canvas.show(PlotSource.of(plot.withTitle("")), true);
    }

    private void question(Composite parent) {
        page(parent);
        PredictionPane pane =
                new PredictionPane(parent, run, style(Math.max(PresenterType.LEAST_POINTS, 0.85 * points), points));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(pane.control());
        prediction = Optional.of(pane);
        Label line = style(PresenterType.LEAST_POINTS, points).named(new Label(parent, SWT.WRAP), "settings");
        line.setForeground(tones.mutedText());
        line.setText(Texts.plain(AnswerWords.settings(run)));
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(line);
        settings = Optional.of(line);
    }

    /** Shows how the lesson stands now. */
    void show() {
        if (control().isEmpty()) {
            return;
        }
        figures.ifPresent(pane -> pane.show(run));
        prediction.ifPresent(PredictionPane::show);
        settings.ifPresent(line -> Parts.say(line, AnswerWords.settings(run)));
        chart.ifPresent(canvas -> step.picture(run)
                .ifPresent(picture -> canvas.show(PlotSource.of(picture.plot().withTitle("")), true)));
        if (step.kind() == PresenterStep.Kind.ANSWER && run.open() && !blocks.equals(PresenterStep.answer(run))) {
            blocks = PresenterStep.answer(run);
            sizes.clear();
            sizes.add(() -> attempt(0));
        }
    }

    void dispose() {
        sizes.clear();
        content.ifPresent(Composite::dispose);
    }
}
