// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.ImageTransfer;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.ohmstead.plot.Plot;
import org.ohmstead.plot.chart.ChartFonts;
import org.ohmstead.plot.chart.ChartOptions;
import org.ohmstead.plot.chart.ChartRanges;
import org.ohmstead.plot.chart.ChartRenderer;
import org.ohmstead.plot.chart.PlotCsv;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ViewWindow;
import org.ohmstead.units.files.WholeFiles;
import org.ohmstead.units.text.Messages;

/** Copies and exports what is in view, without what is hidden, in the colours for paper. */
public final class ChartSaving {
    private static final int CLIPBOARD_SAMPLES = 20_000;
    private static final double PIXELS_PER_POINT = 2;
    private static final double SMALLEST_WIDTH = 360;
    private static final double SMALLEST_HEIGHT = 240;
    private static final String[] PATTERNS = {"*.svg", "*.png", "*.pdf", "*.csv"};
    private static final String[] KINDS = {"kind.svg", "kind.png", "kind.pdf", "kind.csv"};
    private static final Messages TEXTS = Messages.of(ChartSaving.class);

    private final ChartPane pane;
    private final ChartModel model;

    /** Makes the saving of one chart. */
    public ChartSaving(ChartPane pane, ChartModel model) {
        this.pane = pane;
        this.model = model;
    }

    /** What is to be saved, fixed at the moment that the user asks for it; drawing it needs no UI thread. */
    private record Job(
            PlotSource source,
            Optional<ViewWindow> window,
            Optional<ChartRanges> home,
            Set<String> hidden,
            double widthPoints,
            double heightPoints,
            boolean decimalComma) {
        Plot plot(int samples) {
            ChartRanges whole =
                    home.orElseGet(() -> ChartRenderer.ranges(source.plot(Optional.empty(), CLIPBOARD_SAMPLES)));
            Plot inView = PictureMaker.inView(source.plot(window, samples), window, whole);
            return PictureMaker.without(inView, hidden);
        }

        Plot drawn() {
            return plot((int) Math.ceil(widthPoints * PIXELS_PER_POINT));
        }
    }

    private Optional<Job> job() {
        Rectangle area = pane.getClientArea();
        double perPoint = pane.pixelsOfPoint();
        return model.source()
                .map(source -> new Job(
                        source,
                        model.window(),
                        model.picture()
                                .filter(picture -> picture.request().source() == source)
                                .map(Picture::home),
                        Set.copyOf(model.hidden()),
                        Math.max(SMALLEST_WIDTH, Math.round(area.width / perPoint)),
                        Math.max(SMALLEST_HEIGHT, Math.round(area.height / perPoint)),
                        model.decimalComma()));
    }

    /** Adds the context menu to the pane. */
    public void addMenu() {
        Menu menu = new Menu(pane);
        MenuItem reset =
                item(menu, TEXTS.text("menu.reset") + "\t0", "chart.menu.reset", () -> model.zoomTo(Optional.empty()));
        new MenuItem(menu, SWT.SEPARATOR);
        MenuItem picture = item(menu, TEXTS.text("menu.copyPicture"), "chart.menu.copyPicture", this::copyPicture);
        MenuItem data = item(menu, TEXTS.text("menu.copyData"), "chart.menu.copyData", this::copyData);
        MenuItem export = item(menu, TEXTS.text("menu.export"), "chart.menu.export", this::askAndExport);
        menu.addListener(SWT.Show, event -> {
            reset.setEnabled(model.window().isPresent());
            boolean any = model.source().isPresent();
            picture.setEnabled(any);
            data.setEnabled(any);
            export.setEnabled(any);
        });
        pane.setMenu(menu);
    }

    private static MenuItem item(Menu menu, String text, String id, Runnable action) {
        MenuItem item = new MenuItem(menu, SWT.PUSH);
        item.setText(text);
        item.setData("ohmstead.id", id);
        item.addListener(SWT.Selection, event -> action.run());
        return item;
    }

    /** Puts the chart on the clipboard as a picture; it is drawn in the background. */
    public void copyPicture() {
        job().ifPresent(job -> inBackground(
                () -> pixels(job), pixels -> copy(pixels, ImageTransfer.getInstance(), TEXTS.text("copied.picture"))));
    }

    /** Puts the numbers in view on the clipboard, as a table with tabs. */
    public void copyData() {
        job().ifPresent(job -> inBackground(
                () -> PlotCsv.writeTabbed(job.plot(CLIPBOARD_SAMPLES)),
                table -> copy(table, TextTransfer.getInstance(), TEXTS.text("copied.data"))));
    }

    private void copy(Object what, Transfer transfer, String notice) {
        Clipboard clipboard = new Clipboard(pane.getDisplay());
        try {
            clipboard.setContents(new Object[] {what}, new Transfer[] {transfer});
        } finally {
            clipboard.dispose();
        }
        pane.showNotice(notice);
    }

    private static ImageData pixels(Job job) {
        int width = (int) Math.round(job.widthPoints() * PIXELS_PER_POINT);
        int height = (int) Math.round(job.heightPoints() * PIXELS_PER_POINT);
        BufferedImage image = Pixels.blank(width, height);
        Graphics2D graphics = image.createGraphics();
        try {
            graphics.scale(PIXELS_PER_POINT, PIXELS_PER_POINT);
            renderer(job).draw(job.drawn(), graphics, job.widthPoints(), job.heightPoints(), ChartOptions.PAPER);
        } finally {
            graphics.dispose();
        }
        return Pixels.toImageData(image);
    }

    /** Writes the chart to the file before returning. */
    public void export(Path file) throws IOException {
        write(
                job().orElseThrow(() -> new IOException(
                        TEXTS.text("save.nothing", file.getFileName().toString()))),
                file);
    }

    private static void write(Job job, Path file) throws IOException {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        double width = job.widthPoints();
        double height = job.heightPoints();
        switch (name.substring(name.lastIndexOf('.') + 1)) {
            case "svg" -> WholeFiles.writeText(file, renderer(job).toSvg(job.drawn(), width, height));
            case "png" -> WholeFiles.write(file, renderer(job).toPng(job.drawn(), width, height, PIXELS_PER_POINT));
            case "pdf" -> WholeFiles.write(file, renderer(job).toPdf(job.drawn(), width, height));
            case "csv" -> WholeFiles.writeText(file, PlotCsv.write(job.plot(Integer.MAX_VALUE)));
            default ->
                throw new IOException(
                        TEXTS.text("save.unknownKind", file.getFileName().toString()));
        }
    }

    private static ChartRenderer renderer(Job job) {
        return new ChartRenderer(ChartFonts.bundled()).withDecimalComma(job.decimalComma());
    }

    private void askAndExport() {
        FileDialog dialog = new FileDialog(pane.getShell(), SWT.SAVE);
        dialog.setText(TEXTS.text("export.title"));
        dialog.setFilterExtensions(PATTERNS);
        dialog.setFilterNames(Stream.of(KINDS).map(TEXTS::text).toArray(String[]::new));
        dialog.setFileName(TEXTS.text("export.file") + ".svg");
        dialog.setOverwrite(true);
        String chosen = dialog.open();
        if (chosen == null) {
            return;
        }
        Path file = named(Path.of(chosen), dialog.getFilterIndex());
        job().ifPresent(job -> inBackground(
                () -> {
                    try {
                        write(job, file);
                        return TEXTS.text("save.done", file.getFileName().toString());
                    } catch (IOException e) {
                        throw new UncheckedIOException(e);
                    }
                },
                pane::showNotice));
    }

    private static Path named(Path chosen, int filter) {
        String name = chosen.getFileName().toString();
        return name.indexOf('.') < 0 && filter >= 0
                ? chosen.resolveSibling(name + PATTERNS[filter].substring(1))
                : chosen;
    }

    private <T> void inBackground(Supplier<T> work, Consumer<T> then) {
        Display display = pane.getDisplay();
        CompletableFuture.supplyAsync(work, PicturePump.executor()).whenComplete((result, failure) -> {
            if (!display.isDisposed()) {
                display.asyncExec(() -> finish(result, failure, then));
            }
        });
    }

    private <T> void finish(T result, Throwable failure, Consumer<T> then) {
        if (pane.isDisposed()) {
            return;
        }
        if (failure == null) {
            then.accept(result);
            return;
        }
        Throwable cause = failure.getCause() == null ? failure : failure.getCause();
        pane.showNotice(TEXTS.text("save.failed", cause.getMessage()));
    }
}
