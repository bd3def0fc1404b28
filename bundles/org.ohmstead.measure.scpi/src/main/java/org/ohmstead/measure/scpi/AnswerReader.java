// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Arrays;
import java.util.function.Supplier;
import org.ohmstead.units.text.Messages;

/** Takes lines and blocks from a link, each within a time and a size. */
final class AnswerReader {
    private static final Messages TEXTS = Messages.of(AnswerReader.class);
    private static final int CHUNK = 1 << 16;
    private static final int SMALL = 1 << 10;

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
        return line(next(nothing()), options.longestLine(), Answer::suits);
    }

    /** Reads a line that may be as long as a block, and take as long. */
    String longLine() throws AnswerFault, IOException, InterruptedException {
        int first = next(nothing());
        expect(options.blockWait());
        return line(first, options.largestBlock(), () -> TEXTS.text("answer.longLine.remedy"));
    }

    private Supplier<String> nothing() {
        return () -> TEXTS.text("answer.nothing", seconds(wait));
    }

    private String line(int first, int longest, Supplier<String> remedy)
            throws AnswerFault, IOException, InterruptedException {
        byte[] bytes = new byte[SMALL];
        int count = 0;
        int end = options.terminator().equals("\r") ? '\r' : '\n';
        for (int each = first; each != end; each = next(halfLine(bytes, count))) {
            if (count == longest) {
                String begun = text(bytes, count);
                throw fault(() -> TEXTS.text("answer.longLine", String.valueOf(longest), begun), remedy);
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
                String read = text(bytes, count);
                throw fault(() -> TEXTS.text("answer.noText", read), () -> TEXTS.text("answer.noText.remedy"));
            }
        }
        return new String(bytes, 0, count, StandardCharsets.ISO_8859_1);
    }

    private Supplier<String> halfLine(byte[] bytes, int count) {
        return () -> TEXTS.text("answer.halfLine", text(bytes, count), seconds(wait));
    }

    private static String text(byte[] bytes, int count) {
        return Answer.shown(new String(bytes, 0, Math.min(count, SMALL), StandardCharsets.ISO_8859_1).strip());
    }

    /** Reads the data of a block of said or unsaid length (IEEE 488.2, 8.7.9 and 8.7.10) and the line's end behind it. */
    byte[] block() throws AnswerFault, IOException, InterruptedException {
        int first = next(nothing());
        if (first != '#') {
            String line = line(first, options.longestLine(), Answer::suits);
            throw new AnswerFault(
                    AnswerFault.After.IN_STEP, () -> TEXTS.text("answer.noBlock", Answer.shown(line)), Answer::suits);
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
            String said = String.valueOf(length);
            throw fault(
                    () -> TEXTS.text("answer.largeBlock", said, String.valueOf(options.largestBlock())),
                    () -> TEXTS.text("answer.fewerPoints"));
        }
        byte[] data = new byte[(int) length];
        fill(data);
        lineEnd(data.length);
        return data;
    }

    private int digit() throws AnswerFault, IOException, InterruptedException {
        int digit = next(() -> TEXTS.text("answer.halfHead", seconds(wait))) - '0';
        if (digit < 0 || digit > 9) {
            throw fault(() -> TEXTS.text("answer.wrongHead"), Answer::suits);
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
                throw LinkFault.of(() -> TEXTS.text("link.reason.block"));
            }
            if (taken == 0) {
                throw fault(
                        () -> TEXTS.text(
                                "answer.halfBlock",
                                String.valueOf(data.length),
                                String.valueOf(rest.position()),
                                seconds(wait)),
                        () -> TEXTS.text("answer.halfBlock.remedy"));
            }
        }
    }

    private void lineEnd(int length) throws AnswerFault, IOException, InterruptedException {
        expect(options.answerWait());
        Supplier<String> missing = () -> TEXTS.text("answer.noLineEnd", String.valueOf(length), seconds(wait));
        int next = next(missing);
        if (next == '\r' && !options.terminator().equals("\r")) {
            next = next(missing);
        }
        if (next != '\n' && next != '\r') {
            throw fault(() -> TEXTS.text("answer.moreBlock", String.valueOf(length)), Answer::suits);
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
                    throw LinkFault.of(() -> TEXTS.text("link.reason.block"));
                }
                if (taken == 0) {
                    String read = String.valueOf(count);
                    throw fault(() -> TEXTS.text("answer.openBlock", read, seconds(wait)), Answer::suits);
                }
            }
            int room = options.largestBlock() + 1 - count;
            int more = Math.min(buffer.remaining(), room);
            if (more == 0 || System.nanoTime() - deadline > 0) {
                String read = String.valueOf(count);
                throw fault(() -> TEXTS.text("answer.endlessBlock", read), () -> TEXTS.text("answer.fewerPoints"));
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
    private int next(Supplier<String> silence) throws AnswerFault, IOException, InterruptedException {
        if (!buffer.hasRemaining()) {
            int taken = take(deadline);
            if (taken < 0) {
                throw LinkFault.of(() -> TEXTS.text("link.reason.answer"));
            }
            if (taken == 0) {
                throw fault(silence, () -> TEXTS.text("answer.silent.remedy"));
            }
        }
        return buffer.get() & 0xff;
    }

    private static AnswerFault fault(Supplier<String> what, Supplier<String> remedy) {
        return new AnswerFault(AnswerFault.After.OUT_OF_STEP, what, remedy);
    }

    private static String seconds(Duration duration) {
        return TEXTS.text("answer.seconds", Show.said(duration.toNanos() / 1e9));
    }
}
