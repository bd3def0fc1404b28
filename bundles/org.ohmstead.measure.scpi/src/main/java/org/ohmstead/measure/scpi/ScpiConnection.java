// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BooleanSupplier;
import org.ohmstead.measure.MeasurementException;

/**
 * A conversation with one instrument over TCP: commands and queries as lines of text (SCPI 1999), answers as text or blocks (IEEE 488.2).
 * Every wait has an end and obeys interrupts, and every answer a largest size. A link that dropped is made anew before the next command;
 * a query during which it drops is asked once more. An answer that came too late or not whole drops the link, so that it is never taken
 * for the answer to the next query.
 *
 * <p>Threads take turns: one that comes while another waits for its answer waits too, except in {@link #interject}.
 */
public final class ScpiConnection implements AutoCloseable {
    private static final int LONGEST_COMMAND = 1000;
    private static final Duration WRITE_WAIT = Duration.ofSeconds(2);
    private static final BooleanSupplier ALWAYS = () -> true;

    private final ScpiAddress address;
    private final ScpiOptions options;
    private final ReentrantLock turn = new ReentrantLock();
    private final ReentrantLock writing = new ReentrantLock();
    private final LinkTrouble trouble;
    private final PowerWatch powerWatch = new PowerWatch(this);
    private AnswerReader reader;
    private int links;
    private volatile Link interjectedOn;
    private volatile Link link;
    private volatile boolean closed;

    private ScpiConnection(ScpiAddress address, ScpiOptions options) {
        this.address = address;
        this.options = options;
        trouble = new LinkTrouble(address);
    }

    /**
     * Connects to an instrument.
     *
     * @throws MeasurementException when nothing answers there
     */
    public static ScpiConnection open(ScpiAddress address, ScpiOptions options)
            throws MeasurementException, InterruptedException {
        ScpiConnection connection =
                new ScpiConnection(Checks.present(address, "address"), Checks.present(options, "options"));
        connection.linked();
        return connection;
    }

    /** Returns where the instrument is. */
    public ScpiAddress address() {
        return address;
    }

    /** Sends a command that has no answer. */
    public void command(String command) throws MeasurementException, InterruptedException {
        command(command, ALWAYS);
    }

    /**
     * Sends a command that has no answer, if it is still allowed at the moment when nothing can come between any more.
     *
     * @param command a line without its end
     * @param allowed asked while no other thread can send
     * @throws MeasurementException when it was not allowed, or could not be sent
     */
    public void command(String command, BooleanSupplier allowed) throws MeasurementException, InterruptedException {
        byte[] bytes = bytes(command);
        turn.lockInterruptibly();
        try {
            linked();
            write(command, bytes, allowed);
        } finally {
            turn.unlock();
        }
    }

    /** Asks for a line, twice if the link drops: the query must do no harm when it comes twice. Returns it without its end. */
    public String query(String query) throws MeasurementException, InterruptedException {
        return ask(query, options.answerWait(), true, AnswerReader::line);
    }

    /**
     * Asks for a line once, whatever happens.
     *
     * @param query a line without its end
     * @param wait the longest that the answer may take
     */
    public String queryOnce(String query, Duration wait) throws MeasurementException, InterruptedException {
        return ask(query, Checks.positive(wait, "wait"), false, AnswerReader::line);
    }

    /** Asks for a number: NR1, NR2 or NR3. An overload (9.9E37) and no number (9.91E37) are failures that say so. */
    public double queryNumber(String query) throws MeasurementException, InterruptedException {
        return ask(query, options.answerWait(), true, from -> Answer.number(from.line()));
    }

    /** Asks for numbers with commas between them. */
    public double[] queryNumbers(String query) throws MeasurementException, InterruptedException {
        return ask(query, options.answerWait(), true, from -> Answer.numbers(from.longLine()));
    }

    /** Asks for a string, and takes its quotes off if it has some. */
    public String queryString(String query) throws MeasurementException, InterruptedException {
        return ask(query, options.answerWait(), true, from -> Answer.string(from.line()));
    }

    /** Asks for fields with commas between them, each with its quotes if it has some. */
    public List<String> queryList(String query) throws MeasurementException, InterruptedException {
        return ask(query, options.answerWait(), true, from -> Answer.list(from.line()));
    }

    /** Asks for a block of bytes of said (#nLENGTH) or unsaid (#0) length. */
    public byte[] queryBlock(String query) throws MeasurementException, InterruptedException {
        return ask(query, options.answerWait(), true, AnswerReader::block);
    }

    /** Asks what it is (*IDN?). */
    public ScpiIdentity identify() throws MeasurementException, InterruptedException {
        return ask("*IDN?", options.answerWait(), true, from -> Answer.identity(from.line()));
    }

    /** Brings it to the state after *RST. */
    public void reset() throws MeasurementException, InterruptedException {
        command("*RST");
    }

    /** Empties its queues and registers (*CLS). */
    public void clear() throws MeasurementException, InterruptedException {
        command("*CLS");
    }

    /**
     * Waits until all that it was told is done (*OPC?).
     *
     * @param wait the longest that it may take
     */
    public void finish(Duration wait) throws MeasurementException, InterruptedException {
        ask("*OPC?", Checks.positive(wait, "wait"), false, from -> Answer.ready(from.line()));
    }

    /**
     * Reads its error queue until it is empty. Returns what was in it, oldest first.
     *
     * @param query such as "SYSTem:ERRor?"
     * @throws MeasurementException when it does not empty
     */
    public List<ScpiError> errors(String query) throws MeasurementException, InterruptedException {
        List<ScpiError> errors = new ArrayList<>();
        while (true) {
            Optional<ScpiError> error = ask(query, options.answerWait(), false, from -> Answer.error(from.line()));
            if (error.isEmpty()) {
                return List.copyOf(errors);
            }
            if (errors.size() == options.mostErrors()) {
                throw trouble.manyErrors(errors, query);
            }
            errors.add(error.get());
        }
    }

    /**
     * Sends commands without answers at once, even while another thread waits for an answer, whose query they do not cut in two.
     *
     * @return whether there was a link and it took them
     */
    public boolean interject(List<String> commands) throws InterruptedException {
        StringBuilder all = new StringBuilder();
        for (String command : commands) {
            all.append(command).append(options.terminator());
        }
        Link now = link;
        if (now == null || !writing.tryLock(WRITE_WAIT.toNanos() / 4, TimeUnit.NANOSECONDS)) {
            return false;
        }
        try {
            interjectedOn = now;
            now.write(all.toString().getBytes(StandardCharsets.US_ASCII), System.nanoTime() + WRITE_WAIT.toNanos() / 4);
            return true;
        } catch (IOException lost) {
            return false; // the caller learns it, and finds out why on a new link
        } finally {
            writing.unlock();
        }
    }

    /**
     * Tries to make sure that commands which were interjected were heard and are done, but not when it is another thread's turn. On a link
     * that was made anew since, they are sent once more: it knows nothing of what the last one lost.
     */
    boolean finishesNow(List<String> commands, Duration wait) throws InterruptedException {
        if (closed || !turn.tryLock()) {
            return false;
        }
        try {
            AnswerReader from = linked();
            if (link != interjectedOn && !interject(commands)) {
                return false;
            }
            askOnce(from, bytes("*OPC?"), wait, each -> Answer.ready(each.line()));
            return true;
        } catch (AnswerFault | MeasurementException unanswered) {
            return false; // the caller goes on to a link of its own, whose failure is told
        } finally {
            turn.unlock();
        }
    }

    /** Makes sure that there is a link. Returns which it is: another number than before says that it was made anew. */
    int linkNumber() throws MeasurementException, InterruptedException {
        turn.lockInterruptibly();
        try {
            linked();
            return links;
        } finally {
            turn.unlock();
        }
    }

    LinkTrouble trouble() {
        return trouble;
    }

    PowerWatch powerWatch() {
        return powerWatch;
    }

    /** Ends the conversation, and every wait of it. A second call does nothing. */
    @Override
    public void close() throws MeasurementException {
        closed = true;
        Link last = link;
        link = null;
        if (last != null) {
            try {
                last.close();
            } catch (IOException failed) {
                throw trouble.notClosed(failed);
            }
        }
    }

    /** Reads one answer. */
    interface Reading<T> {
        T from(AnswerReader reader) throws AnswerFault, IOException, InterruptedException;
    }

    /**
     * Asks something.
     *
     * @param wait the longest that the line, or the first byte of a block, may take
     * @param twice whether to ask again if the link drops
     */
    <T> T ask(String query, Duration wait, boolean twice, Reading<T> reading)
            throws MeasurementException, InterruptedException {
        byte[] bytes = bytes(query);
        turn.lockInterruptibly();
        try {
            try {
                return askOnce(linked(), bytes, wait, reading);
            } catch (AnswerFault fault) {
                if (!twice || fault.after() != AnswerFault.After.LOST || closed) {
                    throw trouble.failed(query, fault);
                }
            }
            try {
                return askOnce(linked(), bytes, wait, reading);
            } catch (AnswerFault fault) {
                throw trouble.failed(query, fault);
            }
        } finally {
            turn.unlock();
        }
    }

    private <T> T askOnce(AnswerReader from, byte[] bytes, Duration wait, Reading<T> reading)
            throws AnswerFault, MeasurementException, InterruptedException {
        boolean inStep = false;
        try {
            send(bytes, ALWAYS);
            from.expect(wait);
            T answer = reading.from(from);
            inStep = true;
            return answer;
        } catch (IOException lost) {
            throw LinkTrouble.lost(lost);
        } catch (AnswerFault fault) {
            inStep = fault.after() == AnswerFault.After.IN_STEP;
            throw fault;
        } finally {
            if (!inStep) {
                drop();
            }
        }
    }

    private void write(String command, byte[] bytes, BooleanSupplier allowed)
            throws MeasurementException, InterruptedException {
        boolean sent = false;
        try {
            if (!send(bytes, allowed)) {
                sent = true;
                throw trouble.notAllowed(command);
            }
            sent = true;
        } catch (IOException lost) {
            throw trouble.droppedAfter(command, lost);
        } finally {
            if (!sent) {
                drop();
            }
        }
    }

    private boolean send(byte[] bytes, BooleanSupplier allowed) throws IOException, InterruptedException {
        writing.lockInterruptibly();
        try {
            Link now = link;
            if (now == null) {
                throw LinkFault.of(LinkTrouble::closedMeanwhile);
            }
            if (!allowed.getAsBoolean()) {
                return false;
            }
            now.write(bytes, System.nanoTime() + WRITE_WAIT.toNanos());
            return true;
        } finally {
            writing.unlock();
        }
    }

    private byte[] bytes(String command) {
        if (command == null || command.isBlank() || command.length() > LONGEST_COMMAND) {
            throw new IllegalArgumentException(
                    "command has to be a line of up to " + LONGEST_COMMAND + " characters, but is \"" + command + "\"");
        }
        if (!command.chars().allMatch(letter -> letter >= ' ' && letter < 0x7f)) {
            throw new IllegalArgumentException(
                    "command is \"" + Answer.shown(command) + "\"; it may hold only printable ASCII");
        }
        return (command + options.terminator()).getBytes(StandardCharsets.US_ASCII);
    }

    /** Returns the reader of a link that is up, made anew if it was dropped. */
    private AnswerReader linked() throws MeasurementException, InterruptedException {
        try {
            if (link != null && reader.dropsStrayBytes()) {
                return reader;
            }
        } catch (IOException lost) {
            drop(); // and made anew below, which tells if it fails
        }
        drop();
        if (closed) {
            throw trouble.closed();
        }
        try {
            Link made = Link.connect(
                    address, System.nanoTime() + options.connectWait().toNanos());
            link = made;
            links++;
            reader = new AnswerReader(made, options);
        } catch (IOException failed) {
            throw trouble.notMade(failed);
        }
        if (closed) {
            close();
        }
        return reader;
    }

    private void drop() throws MeasurementException {
        Link last = link;
        link = null;
        if (last != null) {
            try {
                last.close();
            } catch (IOException failed) {
                throw trouble.notClosed(failed);
            }
        }
    }
}
