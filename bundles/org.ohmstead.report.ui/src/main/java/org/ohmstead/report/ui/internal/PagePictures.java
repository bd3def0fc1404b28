// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.ui.internal;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageDataProvider;
import org.eclipse.swt.graphics.PaletteData;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.report.PagePicture;
import org.ohmstead.report.PageSize;
import org.ohmstead.workbench.session.BackgroundWork;

/**
 * The pages as images at the pixels of the monitor, drawn in the background one after the other. Until a page is drawn anew its old
 * image stays, so that nothing goes blank.
 */
final class PagePictures {
    /** More pixels are not worth their memory; a larger page is drawn at this and stretched. */
    private static final double MOST_PIXELS = 8e6;

    private static final int FULL_ZOOM = 100;

    private record Drawn(Image image, SheetMaker.Pages from, double pixelScale) {}

    private record Order(SheetMaker.Pages from, int page, double pixelScale) {}

    private final Control owner;
    private final BackgroundWork work;
    private final Runnable changed;
    private final Map<Integer, Drawn> drawn = new HashMap<>();
    private Optional<SheetMaker.Pages> pages = Optional.empty();
    private Optional<Order> pending = Optional.empty();
    private List<Integer> wanted = List.of();
    private double wantedScale = 1;
    private String failure = "";

    PagePictures(Control owner, BackgroundWork work, Runnable changed) {
        this.owner = owner;
        this.work = work;
        this.changed = changed;
        owner.addDisposeListener(event -> clear());
    }

    void show(Optional<SheetMaker.Pages> newPages) {
        pages = newPages;
        failure = "";
        drawn.entrySet().removeIf(entry -> {
            boolean gone =
                    newPages.map(some -> entry.getKey() >= some.sizes().size()).orElse(true);
            if (gone) {
                entry.getValue().image().dispose();
            }
            return gone;
        });
    }

    /** Returns the image of a page, perhaps of another size or of the sheet before. */
    Optional<Image> image(int page) {
        return Optional.ofNullable(drawn.get(page)).map(Drawn::image);
    }

    /** Returns whether every wanted page shows what it should, as sharp as the monitor can. */
    boolean complete() {
        return pages.isPresent() && wanted.stream().allMatch(this::isFresh);
    }

    /** Returns why pages cannot be drawn; empty when they can. */
    String failure() {
        return failure;
    }

    /**
     * Asks for pages.
     *
     * @param newWanted which, the most urgent first
     * @param pointScale points of the screen for each point of paper
     */
    void want(List<Integer> newWanted, double pointScale) {
        wanted = List.copyOf(newWanted);
        wantedScale = pointScale * owner.getMonitor().getZoom() / FULL_ZOOM;
        drawn.entrySet().removeIf(entry -> {
            boolean far = !wanted.contains(entry.getKey());
            if (far) {
                entry.getValue().image().dispose();
            }
            return far;
        });
        drawNext();
    }

    private double pixelScale(int page) {
        PageSize size = pages.orElseThrow().sizes().get(page);
        return Math.min(wantedScale, Math.sqrt(MOST_PIXELS / (size.widthPoints() * size.heightPoints())));
    }

    private boolean isFresh(int page) {
        Drawn have = drawn.get(page);
        return have != null && have.from() == pages.orElse(null) && have.pixelScale() == pixelScale(page);
    }

    private void drawNext() {
        if (pending.isPresent() || pages.isEmpty() || !failure.isEmpty()) {
            return;
        }
        Optional<Integer> next = wanted.stream().filter(page -> !isFresh(page)).findFirst();
        if (next.isEmpty()) {
            return;
        }
        Order order = new Order(pages.get(), next.get(), pixelScale(next.get()));
        pending = Optional.of(order);
        EndedWork.start(
                work,
                Texts.say("pages.job", order.page() + 1 + ""),
                progress -> data(order.from().picture(order.page(), order.pixelScale())),
                data -> arrived(order, data),
                this::failed,
                () -> failed(new IllegalStateException(Texts.say("pages.cancelled"))));
    }

    private static ImageData data(PagePicture picture) {
        int width = picture.widthPixels();
        ImageData data =
                new ImageData(width, picture.heightPixels(), 24, new PaletteData(0xff0000, 0x00ff00, 0x0000ff));
        for (int row = 0; row < picture.heightPixels(); row++) {
            data.setPixels(0, row, width, picture.rgb(), row * width);
        }
        return data;
    }

    private void arrived(Order order, ImageData data) {
        if (owner.isDisposed()) {
            return;
        }
        pending = Optional.empty();
        boolean current = pages.map(some -> some == order.from()).orElse(false);
        if (current && wanted.contains(order.page())) {
            failure = "";
            Drawn before = drawn.put(order.page(), new Drawn(image(data), order.from(), order.pixelScale()));
            if (before != null) {
                before.image().dispose();
            }
            changed.run();
        }
        drawNext();
    }

    private Image image(ImageData data) {
        int monitorZoom = owner.getMonitor().getZoom();
        ImageDataProvider provider = zoom -> zoom == monitorZoom
                ? data
                : data.scaledTo(
                        Math.max(1, Math.round((float) data.width * zoom / monitorZoom)),
                        Math.max(1, Math.round((float) data.height * zoom / monitorZoom)));
        return new Image(owner.getDisplay(), provider);
    }

    private void failed(Exception cause) {
        if (!owner.isDisposed()) {
            pending = Optional.empty();
            failure = cause.getMessage();
            changed.run();
        }
    }

    /** Tries again after a failure. */
    void retry() {
        failure = "";
        drawNext();
    }

    private void clear() {
        drawn.values().forEach(each -> each.image().dispose());
        drawn.clear();
        pages = Optional.empty();
    }
}
