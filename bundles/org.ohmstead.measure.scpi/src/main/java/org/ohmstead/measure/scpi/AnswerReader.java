// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;

/** Takes lines and blocks from a link, each within a time and a size. */
final class AnswerReader {
    private static final int CHUNK = 1 << 16;
    private static final int SMALL = 1 << 10;
    private static final String SUITS = "Check that the command set suits the instrument.";

    private final Link link;
    private final ScpiOptions options;
    private final ByteBuffer buffer = ByteBuffer.allocate(CHUNK).flip();
    private Duration wait;
    private long deadline;

    AnswerReader(Link link, ScpiOptions options) {
        this.link = link;
        this.options = options;
    }

    /** Says that an answer is due within a time from now. */
    void expect(Duration within) {
        wait = within;
        deadline = System.nanoTime() + within.toNanos();
    }

    /** Returns what had come without a question to throw it away; more than a little means that answers are out of step. */
    boolean dropsStrayBytes() throws IOException, InterruptedException {
        buffer.position(buffer.limit());
        for (int taken = 0; taken < CHUNK; taken += buffer.limit()) {
            buffer.clear();
            int count = link.read(buffer, System.nanoTime());
            buffer.flip();
            if (count < 0) {
                return false;
            }
            if (count == 0) {
                return true;
            }
            buffer.position(buffer.limit());
        }
        return false;
    }

    /** Reads a line without its end. */
    String line() throws AnswerFault, IOException, InterruptedException {
        return line(next(nothing()), options.longestLine(), SUITS);
    }

    /** Reads a line that may be as long as a block, and take as long. */
    String longLine() throws AnswerFault, IOException, InterruptedException {
        int first = next(nothing());
        expect(options.blockWait());
        return line(first, options.largestBlock(), "Record fewer points, or have them sent as a block.");
    }

    private String nothing() {
        return "sent nothing within " + seconds(wait);
    }

    private String line(int first, int longest, String remedy) throws AnswerFault, IOException, InterruptedException {
        byte[] bytes = new byte[SMALL];
        int count = 0;
        int end = options.terminator().equals("\r") ? '\r' : '\n';
        for (int each = first; each != end; each = next(halfLine(bytes, count))) {
            if (count == longest) {
                throw fault(
                        "sent a line of more than " + longest + " characters, beginning \"" + text(bytes, count)
                                + "\",",
                        remedy);
            }
            if (count == bytes.length) {
                bytes = Arrays.copyOf(bytes, (int) Math.min(2L * count, longest));
            }
            bytes[count] = (byte) each;
            count++;
        }
        if (count > 0 && bytes[count - 1] == '\r') {
            count--;
        }
        for (int i = 0; i < count; i++) {
            if (bytes[i] < ' ' && bytes[i] != '\t' || bytes[i] == 0x7f) {
                throw fault(
                        "sent something that is no text, beginning \"" + text(bytes, count) + "\",",
                        "Check that the address and port are those for commands, and that the command set suits it.");
            }
        }
        return new String(bytes, 0, count, StandardCharsets.ISO_8859_1);
    }

    private String halfLine(byte[] bytes, int count) {
        // Made for every byte otherwise, of which only the last is ever read.
        return buffer.hasRemaining()
                ? ""
                : "sent \"" + text(bytes, count) + "\" without an end of line within " + seconds(wait);
    }

    private static String text(byte[] bytes, int count) {
        return Answer.shown(new String(bytes, 0, Math.min(count, SMALL), StandardCharsets.ISO_8859_1).strip());
    }

    /** Reads the data of a block of said or unsaid length (IEEE 488.2, 8.7.9 and 8.7.10) and the line's end behind it. */
    byte[] block() throws AnswerFault, IOException, InterruptedException {
        int first = next(nothing());
        if (first != '#') {
            String line = line(first, options.longestLine(), SUITS);
            throw new AnswerFault(
                    AnswerFault.After.IN_STEP, "answered \"" + Answer.shown(line) + "\" where a block is due", SUITS);
        }
        expect(options.blockWait());
        int digits = digit();
        if (digits == 0) {
            return unsaidLength();
        }
        long length = 0;
        for (int i = 0; i < digits; i++) {
            length = 10 * length + digit();
        }
        if (length > options.largestBlock()) {
            throw fault(
                    "announced a block of " + length + " bytes, more than the " + options.largestBlock()
                            + " that are taken,",
                    "Record fewer points.");
        }
        byte[] data = new byte[(int) length];
        fill(data);
        lineEnd(data.length);
        return data;
    }

    private int digit() throws AnswerFault, IOException, InterruptedException {
        int digit = next("stopped within the head of a block for " + seconds(wait)) - '0';
        if (digit < 0 || digit > 9) {
            throw fault("sent a block whose head has no digit where one is due,", SUITS);
        }
        return digit;
    }

    private void fill(byte[] data) throws AnswerFault, IOException, InterruptedException {
        int count = Math.min(buffer.remaining(), data.length);
        buffer.get(data, 0, count);
        ByteBuffer rest = ByteBuffer.wrap(data);
        rest.position(count);
        while (rest.hasRemaining()) {
            int taken = link.read(rest, deadline);
            if (taken < 0) {
                throw new EOFException("within a block");
            }
            if (taken == 0) {
                throw fault(
                        "announced a block of " + data.length + " bytes, but sent only " + rest.position() + " within "
                                + seconds(wait),
                        "Check the link, and record fewer points if it is slow.");
            }
        }
    }

    private void lineEnd(int length) throws AnswerFault, IOException, InterruptedException {
        expect(options.answerWait());
        String missing = "sent no end of line behind a block of " + length + " bytes within " + seconds(wait);
        int next = next(missing);
        if (next == '\r' && !options.terminator().equals("\r")) {
            next = next(missing);
        }
        if (next != '\n' && next != '\r') {
            throw fault("announced a block of " + length + " bytes, but more came,", SUITS);
        }
    }

    private byte[] unsaidLength() throws AnswerFault, IOException, InterruptedException {
        byte[] data = new byte[SMALL];
        int count = 0;
        while (true) {
            boolean mayEnd = count > 0 && data[count - 1] == '\n';
            if (!buffer.hasRemaining()) {
                long until = mayEnd
                        ? Math.min(
                                deadline,
                                System.nanoTime() + options.quietWait().toNanos())
                        : deadline;
                int taken = take(until);
                if (taken <= 0 && mayEnd) {
                    return Arrays.copyOf(data, count - 1);
                }
                if (taken < 0) {
                    throw new EOFException("within a block");
                }
                if (taken == 0) {
                    throw fault("sent " + count + " bytes of a block without an end within " + seconds(wait), SUITS);
                }
            }
            int room = options.largestBlock() + 1 - count;
            int more = Math.min(buffer.remaining(), room);
            if (more == 0 || System.nanoTime() - deadline > 0) {
                throw fault(
                        "sent a block of unsaid length that did not end within " + count + " bytes,",
                        "Record fewer points.");
            }
            if (count + more > data.length) {
                data = Arrays.copyOf(data, (int) Math.min(2L * (count + more), options.largestBlock() + 1L));
            }
            buffer.get(data, count, more);
            count += more;
        }
    }

    private int take(long until) throws IOException, InterruptedException {
        buffer.clear();
        int taken = link.read(buffer, until);
        buffer.flip();
        return taken;
    }

    /** Returns the next byte as 0 to 255. */
    private int next(String silence) throws AnswerFault, IOException, InterruptedException {
        if (!buffer.hasRemaining()) {
            int taken = take(deadline);
            if (taken < 0) {
                throw new EOFException("before the end of an answer");
            }
            if (taken == 0) {
                throw fault(
                        silence,
                        "Check that it is on, not busy and not waiting for a trigger, and that the command set"
                                + " suits it.");
            }
        }
        return buffer.get() & 0xff;
    }

    private static AnswerFault fault(String what, String remedy) {
        return new AnswerFault(AnswerFault.After.OUT_OF_STEP, what, remedy);
    }

    private static String seconds(Duration duration) {
        return Show.number(duration.toNanos() / 1e9) + " s";
    }
}
