// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * How the instruments of one kind are spoken to, as read from a text file of this form:
 *
 * <pre>{@code
 * # What follows a # at the beginning of a line is a remark.
 * name = Supply with two outputs
 * role = supply
 *
 * [set volts]
 * INSTrument:NSELect {channel}
 * SOURce:VOLTage:LEVel:IMMediate:AMPLitude {volts}
 *
 * [measure amps]
 * MEASure:SCALar:CURRent:DC? -> number
 * }</pre>
 *
 * <p>Before the first section there are keys: {@code name} and {@code role} (supply, multimeter, generator, oscilloscope), which must be
 * there; {@code identity}: a text that the answer to *IDN? must hold, or {@code any} not to ask; {@code errors}: the query for the error
 * queue, usually {@code SYSTem:ERRor?}, or {@code none}; for a generator {@code amplitude}, which must be there: whether amplitudes are
 * {@code rms}, {@code peak} or {@code peak-to-peak} volts; for an oscilloscope {@code range}, which must be there: whether {volts} of a
 * range is {@code peak} or {@code peak-to-peak}.
 *
 * <p>A section in brackets is something to do; its lines are sent one after the other. Of a supply: start, set volts {volts}, set current
 * limit {amps}, output on, output off, measure volts, measure amps. Of a multimeter: start, measure volts, measure amps, measure
 * temperature (degrees Celsius). Of a generator: start, set limit {amplitude}, set sine {frequencyHz} {amplitude}, set burst {frequencyHz}
 * {amplitude} {lowAmplitude} {onSeconds} {offSeconds} {periodSeconds} {onCycles}, silence, output on, output off. Of an oscilloscope:
 * start, set range {volts}, read range, set time {seconds} {points} {intervalSeconds} {sampleRateHz}, arm, wait, fetch, interval (seconds from one
 * sample to the next), scale, reference and zero: volts = (sample - reference) x scale + zero. {channel} may stand in any of them.
 *
 * <p>A query is followed by {@code ->} and the shape of its answer: {@code number}; {@code number times 0.001}; {@code number 5 of list},
 * with or without {@code times}; {@code ready}, which waits for 1 as *OPC? gives it; {@code list} of samples; {@code block} with a format
 * (int8, uint8, int16, uint16, int32, float32, float64) and, of more than one byte, {@code high first} or {@code low first}.
 */
public final class CommandSet {
    private final String id;
    private final InstrumentRole role;
    private final Map<String, String> keys;
    private final Map<String, List<CommandLine>> sections;

    CommandSet(String id, InstrumentRole role, Map<String, String> keys, Map<String, List<CommandLine>> sections) {
        this.id = id;
        this.role = role;
        this.keys = Map.copyOf(keys);
        Map<String, List<CommandLine>> copied = new LinkedHashMap<>();
        sections.forEach((name, lines) -> copied.put(name, List.copyOf(lines)));
        this.sections = Collections.unmodifiableMap(copied);
    }

    /** Returns its short name: that of its file without the ending. */
    public String id() {
        return id;
    }

    /** Returns what a person calls it. */
    public String name() {
        return keys.get("name");
    }

    /** Returns what it is for. */
    public InstrumentRole role() {
        return role;
    }

    /** Returns what it says how to do, such as "set volts". */
    public Set<String> actions() {
        return sections.keySet();
    }

    /** Returns whether it says how to do something. */
    public boolean has(String action) {
        return sections.containsKey(action);
    }

    /** Returns whether something is done for one channel of several. */
    boolean fills(String action, String placeholder) {
        return has(action)
                && sections.get(action).stream()
                        .anyMatch(line -> line.placeholders().contains(placeholder));
    }

    List<CommandLine> lines(String action) {
        return sections.getOrDefault(action, List.of());
    }

    String key(String key, String otherwise) {
        return keys.getOrDefault(key, otherwise);
    }

    @Override
    public String toString() {
        return id + " (" + role.word() + "): " + new TreeSet<>(sections.keySet());
    }
}
