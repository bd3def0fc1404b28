// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.engine;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Said;

/** Calls of foreign code: whatever it throws becomes an answer. */
final class Contained {
    private static final int LONGEST_MESSAGE = 300;
    /** Apart from the threads of runs, among which it is looked for those left behind. */
    private static final ThreadGroup GROUP = new ThreadGroup("ohmstead calls");

    private Contained() {}

    /** What became of a call. */
    sealed interface Answer<T> {
        /** Returns what it returned; empty when it did not, or returned null. */
        default Optional<T> returned() {
            return Optional.empty();
        }

        /** It returned. */
        record Value<T>(T value) implements Answer<T> {
            @Override
            public Optional<T> returned() {
                return Optional.ofNullable(value);
            }
        }

        /** It threw. */
        record Threw<T>(Throwable cause) implements Answer<T> {}

        /** It did not return in time, or the caller was told to end; its thread was interrupted and given up. */
        record Hung<T>() implements Answer<T> {}
    }

    /** Calls on a thread of its own, in the language spoken on this one, and waits. When the caller is interrupted, it remains so, and the answer is that it hung. */
    static <T> Answer<T> call(String threadName, Duration limit, Callable<T> work) {
        Locale language = Language.current();
        Attempt<T> attempt = new Attempt<>(() -> Language.speaking(language, work::call));
        Thread thread = new Thread(GROUP, attempt, threadName);
        thread.setDaemon(true);
        thread.start();
        try {
            Optional<Answer<T>> answer = attempt.within(limit.toNanos());
            if (answer.isPresent()) {
                return answer.get();
            }
        } catch (InterruptedException told) {
            Thread.currentThread().interrupt();
        }
        attempt.cancel(true);
        return new Answer.Hung<>();
    }

    /** Calls on this thread; for what cannot be waited for anyhow, such as listeners. */
    static <T> Answer<T> here(Callable<T> work) {
        Attempt<T> attempt = new Attempt<>(work);
        boolean interrupted = Thread.interrupted();
        attempt.run();
        interrupted |= Thread.interrupted();
        try {
            return attempt.within(0).orElseThrow();
        } catch (InterruptedException told) {
            throw new IllegalStateException("what has ended is not waited for", told);
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }

    /** Returns what was thrown, unless the whole machine is at an end, which nobody can contain. */
    static Throwable notFatal(Throwable thrown) {
        if (thrown instanceof VirtualMachineError fatal && !(thrown instanceof StackOverflowError)) {
            throw fatal;
        }
        return thrown;
    }

    /** Returns what was thrown as words to follow "it failed with"; the foreign message may itself be faulty. */
    static Said words(Throwable thrown) {
        return new Said(words(thrown, thrown::getMessage), words(thrown, thrown::getLocalizedMessage));
    }

    private static String words(Throwable thrown, Callable<String> asked) {
        String name = thrown.getClass().getSimpleName();
        String message = here(asked) instanceof Answer.Value<String> value ? value.value() : null;
        if (message == null || message.isBlank()) {
            return name;
        }
        return name + " (" + cut(message.strip()) + ")";
    }

    static String cut(String text) {
        return clean(text.length() <= LONGEST_MESSAGE ? text : text.substring(0, LONGEST_MESSAGE) + "...");
    }

    /** Returns a text without halves of surrogate pairs, which no file can hold. */
    static String clean(String text) {
        return new String(text.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8);
    }
}
