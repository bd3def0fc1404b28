// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;

/** The lines that somebody types. A wait for one can be interrupted, which a wait for the terminal itself cannot. */
final class ConsoleInput {
    private final InputStream in;
    private final boolean terminal;
    private final BlockingQueue<Optional<String>> lines = new LinkedBlockingQueue<>();
    private boolean reading;
    private volatile boolean ended;

    /**
     * Makes an input that reads nothing until it is asked.
     *
     * @param in what to read from
     * @param terminal whether a person types there
     */
    ConsoleInput(InputStream in, boolean terminal) {
        this.in = in;
        this.terminal = terminal;
    }

    /** Returns whether a person types there. */
    boolean terminal() {
        return terminal;
    }

    /** Lets go what a person typed before a question could be read; what a file says ahead is meant so. */
    void forgetEarlier() {
        if (terminal && !ended) {
            lines.clear();
        }
    }

    /** Returns the next line without spaces around it; empty at the end of the input. */
    Optional<String> line() throws InterruptedException {
        start();
        if (ended && lines.isEmpty()) {
            return Optional.empty();
        }
        return lines.take();
    }

    private synchronized void start() {
        if (!reading) {
            reading = true;
            Thread thread = new Thread(this::read, "ohmstead input");
            thread.setDaemon(true);
            thread.start();
        }
    }

    private void read() {
        Charset charset = Charset.forName(
                System.getProperty("native.encoding", Charset.defaultCharset().name()));
        // It is not ours to close: the next command line of the same process may read on.
        BufferedReader reader = new BufferedReader(new InputStreamReader(in, charset));
        try {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                lines.add(Optional.of(line.strip()));
            }
        } catch (IOException broken) {
            System.getLogger(ConsoleInput.class.getName())
                    .log(System.Logger.Level.DEBUG, "the input ended early", broken);
        }
        ended = true;
        lines.add(Optional.empty());
    }
}
