// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.plot.ui.internal;

import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.ImageData;
import org.eclipse.swt.graphics.ImageDataProvider;
import org.eclipse.swt.widgets.Display;

/**
 * Has pictures drawn in the background, one at a time; of the requests that come meanwhile only the latest counts. Used
 * in the UI thread only.
 */
public final class PicturePump {
    private static final int WORKERS = 2;
    private static final int IDLE_SECONDS = 10;
    private static final Executor BACKGROUND = background();

    private final Display display;
    private final PictureMaker maker = new PictureMaker();
    private final BiConsumer<Picture, Image> drawn;
    private final Consumer<Throwable> failed;
    private Optional<Request> waiting = Optional.empty();
    private boolean busy;
    private boolean stopped;
    private int count;

    /**
     * Makes a pump that works in the UI thread.
     *
     * @param drawn gets each picture, and its image to be disposed of by the receiver
     * @param failed gets what went wrong instead
     */
    public PicturePump(Display display, BiConsumer<Picture, Image> drawn, Consumer<Throwable> failed) {
        this.display = display;
        this.drawn = drawn;
        this.failed = failed;
    }

    private static Executor background() {
        ThreadPoolExecutor executor = new ThreadPoolExecutor(
                WORKERS, WORKERS, IDLE_SECONDS, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), work -> {
                    Thread thread = new Thread(work, "Ohmstead charts");
                    thread.setDaemon(true);
                    return thread;
                });
        executor.allowCoreThreadTimeOut(true);
        return executor;
    }

    /** Returns what charts use for work in the background. */
    public static Executor executor() {
        return BACKGROUND;
    }

    /** Asks for a picture; it replaces any request that is still waiting. */
    public void ask(Request request) {
        waiting = Optional.of(request);
        if (!busy) {
            start();
        }
    }

    /** Returns whether a picture is being drawn or waited for. */
    public boolean busy() {
        return busy;
    }

    /** Returns how many pictures were drawn so far. */
    public int count() {
        return count;
    }

    /** Takes no more requests and hands out no more pictures. */
    public void stop() {
        stopped = true;
        waiting = Optional.empty();
    }

    private void start() {
        Request request = waiting.orElseThrow();
        waiting = Optional.empty();
        busy = true;
        CompletableFuture.supplyAsync(() -> drawn(request), BACKGROUND).whenComplete((result, failure) -> {
            if (!display.isDisposed()) {
                display.asyncExec(() -> finish(result, failure));
            }
        });
    }

    private record Drawn(Picture picture, Image image) {}

    // The image too is made here: for a large screen that alone would hold up the UI thread for too long.
    private Drawn drawn(Request request) {
        Picture picture = maker.make(request);
        ImageDataProvider provider = zoom -> at(picture, zoom);
        return new Drawn(picture, new Image(display, provider));
    }

    private static ImageData at(Picture picture, int zoom) {
        Request request = picture.request();
        if (zoom == request.zoomPercent()) {
            return picture.pixels();
        }
        int width = Math.round(request.width() * zoom / 100f);
        int height = Math.round(request.height() * zoom / 100f);
        return picture.pixels().scaledTo(width, height);
    }

    private void finish(Drawn result, Throwable failure) {
        busy = false;
        if (stopped) {
            if (result != null) {
                result.image().dispose();
            }
            return;
        }
        if (waiting.isPresent()) {
            start();
        }
        if (failure == null) {
            count++;
            drawn.accept(result.picture(), result.image());
        } else {
            failed.accept(failure.getCause() == null ? failure : failure.getCause());
        }
    }
}
