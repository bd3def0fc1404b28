// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.time.Duration;
import java.util.List;

/**
 * How patient a connection is, and how much it takes in.
 *
 * @param connectWait the longest that making the link may take
 * @param answerWait the longest from a query to the end of its line, or to the first byte of its block
 * @param blockWait the longest that the rest of a block may take
 * @param quietWait the pause that ends a block of unsaid length after a line feed, since a socket has no END message
 * @param terminator what ends a command: line feed, carriage return and line feed, or carriage return
 * @param longestLine most characters of a line, at least 64
 * @param largestBlock most bytes of a block, at least 64
 * @param mostErrors most entries read from an error queue, at least 1
 */
public record ScpiOptions(
        Duration connectWait,
        Duration answerWait,
        Duration blockWait,
        Duration quietWait,
        String terminator,
        int longestLine,
        int largestBlock,
        int mostErrors) {
    /** 3 s to connect, 5 s to answer, 30 s for a block of up to 64 MiB, lines of up to 1 MiB that end with a line feed. */
    public static final ScpiOptions USUAL = new ScpiOptions(
            Duration.ofSeconds(3),
            Duration.ofSeconds(5),
            Duration.ofSeconds(30),
            Duration.ofMillis(250),
            "\n",
            1 << 20,
            1 << 26,
            32);

    public ScpiOptions {
        Checks.positive(connectWait, "connectWait");
        Checks.positive(answerWait, "answerWait");
        Checks.positive(blockWait, "blockWait");
        Checks.positive(quietWait, "quietWait");
        if (!List.of("\n", "\r\n", "\r").contains(terminator)) {
            throw new IllegalArgumentException(
                    "terminator must be a line feed, a carriage return and a line feed, or a carriage return");
        }
        Checks.within(longestLine, 64, 1 << 28, "longestLine");
        Checks.within(largestBlock, 64, 1 << 30, "largestBlock");
        Checks.within(mostErrors, 1, 10_000, "mostErrors");
    }

    /** Returns these with another patience for making the link and for answers. */
    public ScpiOptions withWaits(Duration newConnectWait, Duration newAnswerWait) {
        return new ScpiOptions(
                newConnectWait, newAnswerWait, blockWait, quietWait, terminator, longestLine, largestBlock, mostErrors);
    }

    /** Returns these with another patience for the rest of a block. */
    public ScpiOptions withBlockWait(Duration newBlockWait) {
        return new ScpiOptions(
                connectWait, answerWait, newBlockWait, quietWait, terminator, longestLine, largestBlock, mostErrors);
    }

    /** Returns these with another end of commands. */
    public ScpiOptions withTerminator(String newTerminator) {
        return new ScpiOptions(
                connectWait, answerWait, blockWait, quietWait, newTerminator, longestLine, largestBlock, mostErrors);
    }

    /** Returns these with other bounds of a line in characters, of a block in bytes and of an error queue in entries. */
    public ScpiOptions withBounds(int newLongestLine, int newLargestBlock, int newMostErrors) {
        return new ScpiOptions(
                connectWait,
                answerWait,
                blockWait,
                quietWait,
                terminator,
                newLongestLine,
                newLargestBlock,
                newMostErrors);
    }
}
