// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * A call of foreign code. What it throws is kept as it is: wrapped in another exception it would be asked for its text, which may itself
 * fail.
 */
final class Attempt<T> extends FutureTask<T> {
    private volatile Optional<Throwable> thrown = Optional.empty();

    Attempt(Callable<T> work) {
        super(work);
    }

    @Override
    protected void setException(Throwable cause) {
        thrown = Optional.of(cause);
        set(null);
    }

    /**
     * Waits for the end.
     *
     * @return what it returned or threw; empty when it has not ended in time, or was cancelled
     */
    Optional<Contained.Answer<T>> within(long nanos) throws InterruptedException {
        try {
            T value = get(nanos, TimeUnit.NANOSECONDS);
            return Optional.of(
                    thrown.isPresent()
                            ? new Contained.Answer.Threw<>(Contained.notFatal(thrown.get()))
                            : new Contained.Answer.Value<>(value));
        } catch (TimeoutException | CancellationException notYet) {
            return Optional.empty();
        } catch (ExecutionException never) {
            throw new IllegalStateException("setException keeps what was thrown to itself", never);
        }
    }
}
