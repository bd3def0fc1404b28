// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.locks.ReentrantLock;
import org.ohmstead.measure.bench.OperatorPort;
import org.osgi.service.component.annotations.Component;

/**
 * What a bench asks the person before it. One question is asked at a time and waits until it is answered, or until whoever asked is
 * interrupted. Any thread.
 */
@Component(service = {OperatorPort.class, OperatorQuestions.class})
public final class OperatorQuestions implements OperatorPort {
    private static final int MOST_WARNINGS = 5;

    private final ReentrantLock oneAtATime = new ReentrantLock();
    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();
    private final List<String> warnings = new ArrayList<>();
    private Optional<Asked> asked = Optional.empty();

    /**
     * A question that waits.
     *
     * @param words what is to be done or told
     * @param value the question when a value is wanted
     * @param kind what kind of answer is wanted
     * @param answer takes the answer; an empty text for no
     */
    record Asked(Kind kind, String words, Optional<Question> value, CompletableFuture<Optional<String>> answer) {
        /** The kinds of answers. */
        enum Kind {
            /** A number in the question's unit. */
            VALUE,
            /** A few words. */
            WORDS,
            /** A yes or a no. */
            YES
        }

        /** Answers. */
        void say(String text) {
            answer.complete(Optional.of(text));
        }

        /** Refuses to answer. */
        void refuse() {
            answer.complete(Optional.empty());
        }
    }

    @Override
    public OptionalDouble ask(Question question) throws InterruptedException {
        Optional<String> text =
                wait(new Asked(Asked.Kind.VALUE, question.what(), Optional.of(question), new CompletableFuture<>()));
        return text.isPresent() ? OptionalDouble.of(Double.parseDouble(text.get())) : OptionalDouble.empty();
    }

    @Override
    public Optional<String> askText(String what) throws InterruptedException {
        return wait(new Asked(Asked.Kind.WORDS, what, Optional.empty(), new CompletableFuture<>()));
    }

    @Override
    public boolean confirm(String sentences) throws InterruptedException {
        return wait(new Asked(Asked.Kind.YES, sentences, Optional.empty(), new CompletableFuture<>()))
                .isPresent();
    }

    @Override
    public void warn(String sentences) {
        synchronized (this) {
            warnings.remove(sentences);
            warnings.add(sentences);
            if (warnings.size() > MOST_WARNINGS) {
                warnings.remove(0);
            }
        }
        tell();
    }

    private Optional<String> wait(Asked question) throws InterruptedException {
        oneAtATime.lockInterruptibly();
        try {
            show(Optional.of(question));
            return question.answer().get();
        } catch (ExecutionException never) {
            throw new IllegalStateException("an answer is only ever given or refused", never);
        } finally {
            show(Optional.empty());
            oneAtATime.unlock();
        }
    }

    private void show(Optional<Asked> now) {
        synchronized (this) {
            asked = now;
        }
        tell();
    }

    private void tell() {
        listeners.forEach(Runnable::run);
    }

    /** Returns the question that waits. */
    synchronized Optional<Asked> asked() {
        return asked;
    }

    /** Returns what must be done now, oldest first. */
    synchronized List<String> warnings() {
        return List.copyOf(warnings);
    }

    /** Forgets the warnings: they were seen. */
    void seen() {
        synchronized (this) {
            warnings.clear();
        }
        tell();
    }

    /** Adds somebody who hears of changes, on the thread that makes them. */
    void addListener(Runnable listener) {
        listeners.add(listener);
    }

    void removeListener(Runnable listener) {
        listeners.remove(listener);
    }
}
