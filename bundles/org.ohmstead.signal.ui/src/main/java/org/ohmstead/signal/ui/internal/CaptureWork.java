// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.WorkProgress;

/** Loads captures in the background, one at a time: what is wanted later makes what was wanted before moot. */
public final class CaptureWork {
    private final Control owner;
    private final BackgroundWork work;
    private final AtomicLong wanted = new AtomicLong();

    /**
     * Makes the loader of a control.
     *
     * @param owner what is told; nothing is told once it is disposed
     */
    public CaptureWork(Control owner, BackgroundWork work) {
        this.owner = owner;
        this.work = work;
    }

    /**
     * Starts loading.
     *
     * @param step told on the user interface's thread what is at hand
     * @param done told on the user interface's thread, unless something else is wanted by then
     * @param failed told on the user interface's thread why it cannot be, unless something else is wanted by then
     */
    public void start(
            CaptureOrder order, Consumer<String> step, Consumer<LoadedCapture> done, Consumer<String> failed) {
        long ticket = wanted.incrementAndGet();
        BooleanSupplier superseded = () -> wanted.get() != ticket;
        CaptureLoading loading = new CaptureLoading(order, superseded);
        work.start(
                Texts.say("work.title", order.title()),
                progress -> loading.run(new ToldProgress(
                        progress,
                        what -> work.later(() -> {
                            if (current(ticket)) {
                                step.accept(what);
                            }
                        }))),
                loaded -> {
                    if (current(ticket)) {
                        wanted.incrementAndGet();
                        done.accept(loaded);
                    }
                },
                failure -> {
                    if (current(ticket)) {
                        wanted.incrementAndGet();
                        failed.accept(sentence(order, failure));
                    }
                });
    }

    /** Makes whatever is being loaded moot. */
    public void stop() {
        wanted.incrementAndGet();
    }

    private boolean current(long ticket) {
        return wanted.get() == ticket && !owner.isDisposed();
    }

    private static String sentence(CaptureOrder order, Exception failure) {
        String message = failure.getMessage();
        return message == null || message.isBlank() ? Texts.say("work.failed", order.title()) : message;
    }

    private record ToldProgress(WorkProgress inner, Consumer<String> told) implements WorkProgress {
        @Override
        public void step(int done, int total, String what) {
            inner.step(done, total, what);
            told.accept(what);
        }

        @Override
        public boolean cancelled() {
            return inner.cancelled();
        }
    }
}
