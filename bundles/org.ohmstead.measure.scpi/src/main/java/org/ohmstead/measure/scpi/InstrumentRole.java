// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What an instrument does on the bench; a command set is for one of these. */
public enum InstrumentRole {
    /** A direct-current supply. */
    SUPPLY(
            "supply",
            List.of(
                    Action.optional("start", Action.Gives.NOTHING),
                    Action.needed("set volts", Action.Gives.NOTHING, "volts"),
                    Action.needed("set current limit", Action.Gives.NOTHING, "amps"),
                    Action.needed("output on", Action.Gives.NOTHING),
                    Action.needed("output off", Action.Gives.NOTHING),
                    Action.optional("measure volts", Action.Gives.NUMBER),
                    Action.optional("measure amps", Action.Gives.NUMBER))),
    /** A meter of direct volts, direct amperes or temperature. */
    MULTIMETER(
            "multimeter",
            List.of(
                    Action.optional("start", Action.Gives.NOTHING),
                    Action.optional("measure volts", Action.Gives.NUMBER),
                    Action.optional("measure amps", Action.Gives.NUMBER),
                    Action.optional("measure temperature", Action.Gives.NUMBER))),
    /** A source of sines. */
    GENERATOR(
            "generator",
            List.of(
                    Action.optional("start", Action.Gives.NOTHING),
                    Action.optional("set limit", Action.Gives.NOTHING, "amplitude"),
                    Action.needed("set sine", Action.Gives.NOTHING, "frequencyHz", "amplitude"),
                    new Action(
                            "set burst",
                            false,
                            Action.Gives.NOTHING,
                            Set.of("frequencyHz", "amplitude"),
                            Set.of("lowAmplitude", "onSeconds", "offSeconds", "periodSeconds", "onCycles")),
                    Action.optional("silence", Action.Gives.NOTHING),
                    Action.needed("output on", Action.Gives.NOTHING),
                    Action.needed("output off", Action.Gives.NOTHING))),
    /** A recorder of waveforms. */
    OSCILLOSCOPE(
            "oscilloscope",
            List.of(
                    Action.optional("start", Action.Gives.NOTHING),
                    Action.needed("set range", Action.Gives.NOTHING, "volts"),
                    Action.optional("read range", Action.Gives.NUMBER),
                    new Action(
                            "set time",
                            true,
                            Action.Gives.NOTHING,
                            Set.of(),
                            Set.of("seconds", "points", "intervalSeconds", "sampleRateHz")),
                    Action.needed("arm", Action.Gives.NO_ANSWER),
                    Action.optional("wait", Action.Gives.NOTHING),
                    Action.needed("fetch", Action.Gives.SAMPLES),
                    Action.needed("interval", Action.Gives.NUMBER),
                    Action.optional("scale", Action.Gives.NUMBER),
                    Action.optional("reference", Action.Gives.NUMBER),
                    Action.optional("zero", Action.Gives.NUMBER)));

    private final String word;
    private final Map<String, Action> actions = new LinkedHashMap<>();

    InstrumentRole(String word, List<Action> actions) {
        this.word = word;
        actions.forEach(action -> this.actions.put(action.name(), action));
    }

    /** Returns the word for it in a command set. */
    public String word() {
        return word;
    }

    Map<String, Action> actions() {
        return actions;
    }

    static Optional<InstrumentRole> of(String word) {
        return Arrays.stream(values()).filter(role -> role.word.equals(word)).findFirst();
    }

    static String words() {
        return Arrays.stream(values()).map(InstrumentRole::word).collect(Collectors.joining(", "));
    }

    /**
     * Something that a command set says how to do.
     *
     * @param name as the file has it in brackets
     * @param needed whether a set must have it
     * @param gives what its query brings
     * @param mustFill placeholders that must be somewhere in its commands
     * @param mayFill placeholders that may be
     */
    record Action(String name, boolean needed, Gives gives, Set<String> mustFill, Set<String> mayFill) {
        /** What an action brings. */
        enum Gives {
            NO_ANSWER,
            NOTHING,
            NUMBER,
            SAMPLES
        }

        static Action needed(String name, Gives gives, String... mustFill) {
            return new Action(name, true, gives, Set.of(mustFill), Set.of());
        }

        static Action optional(String name, Gives gives, String... mustFill) {
            return new Action(name, false, gives, Set.of(mustFill), Set.of());
        }
    }
}
