// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.ohmstead.model.Mode;
import org.ohmstead.testlog.EntryKind;

/**
 * Which entries of a log are wanted: those that meet every condition. Texts are compared without regard to small and capital letters;
 * in {@code amplifier}, {@code serialNumber}, {@code bench}, {@code operator}, {@code loadId} and {@code stepId} an asterisk stands for
 * any letters, and an empty text for no condition.
 *
 * @param words each must be part of what the entry says, of one of its names, or be its whole id
 * @param kinds which kinds; empty for all
 * @param chain label of the chain; "own" for the log's own; empty for all
 * @param amplifier which amplifier
 * @param serialNumber which specimen
 * @param bench on which bench
 * @param operator who found it
 * @param mode how the channels met the load
 * @param loadOhms what the load stands for, in ohms, above 0
 * @param loadId which load
 * @param stepId which step of the plan
 * @param from taken (or added, when it was not taken) at this moment or later
 * @param to taken (or added, when it was not taken) before this moment
 * @param ranges of figures
 * @param states whether it counts; empty for all
 * @param overdueOnly whether only entries with an overdue instrument are wanted
 */
public record Find(
        List<String> words,
        Set<EntryKind> kinds,
        String chain,
        String amplifier,
        String serialNumber,
        String bench,
        String operator,
        Optional<Mode> mode,
        OptionalDouble loadOhms,
        String loadId,
        String stepId,
        Optional<Instant> from,
        Optional<Instant> to,
        List<FigureRange> ranges,
        Set<EntryState> states,
        boolean overdueOnly) {
    /** What stands for the log's own chain in a query. */
    public static final String OWN_CHAIN = "own";

    /** Every entry. */
    public static final Find EVERYTHING = new Find(
            List.of(),
            Set.of(),
            "",
            "",
            "",
            "",
            "",
            Optional.empty(),
            OptionalDouble.empty(),
            "",
            "",
            Optional.empty(),
            Optional.empty(),
            List.of(),
            Set.of(),
            false);

    public Find {
        words = List.copyOf(words);
        if (words.stream().anyMatch(String::isBlank)) {
            throw new IllegalArgumentException("words holds a blank one; each needs a text");
        }
        kinds = Set.copyOf(kinds);
        Objects.requireNonNull(chain, "chain");
        Objects.requireNonNull(amplifier, "amplifier");
        Objects.requireNonNull(serialNumber, "serialNumber");
        Objects.requireNonNull(bench, "bench");
        Objects.requireNonNull(operator, "operator");
        Objects.requireNonNull(mode, "mode");
        if (loadOhms.isPresent() && !(loadOhms.getAsDouble() > 0 && Double.isFinite(loadOhms.getAsDouble()))) {
            throw new IllegalArgumentException("loadOhms is " + loadOhms.getAsDouble() + "; it must be above 0");
        }
        Objects.requireNonNull(loadId, "loadId");
        Objects.requireNonNull(stepId, "stepId");
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        ranges = List.copyOf(ranges);
        states = Set.copyOf(states);
    }

    /**
     * Returns the query that a text means, such as {@code amplifier:Larkspur load:4 mode:stereo power:80..120 from:2026-01-01 sagged}.
     * A blank text means every entry.
     *
     * @throws FindException when a part of it is not understood
     */
    public static Find parse(String text) throws FindException {
        return FindParser.parse(text);
    }

    /** Returns a text that {@link #parse} makes this query of. */
    public String toText() {
        return FindText.of(this);
    }

    /** Returns whether every entry is wanted. */
    public boolean everything() {
        return equals(EVERYTHING);
    }

    /** Returns this query with other words. */
    public Find withWords(List<String> wanted) {
        return edit().words(wanted).find();
    }

    /** Returns this query for other kinds; none for all. */
    public Find withKinds(Set<EntryKind> wanted) {
        return edit().kinds(new LinkedHashSet<>(wanted)).find();
    }

    /** Returns this query for another chain. */
    public Find withChain(String wanted) {
        return edit().text(FindKey.CHAIN, wanted).find();
    }

    /** Returns this query for another amplifier. */
    public Find withAmplifier(String wanted) {
        return edit().text(FindKey.AMPLIFIER, wanted).find();
    }

    /** Returns this query for another specimen. */
    public Find withSerialNumber(String wanted) {
        return edit().text(FindKey.SERIAL, wanted).find();
    }

    /** Returns this query for another bench. */
    public Find withBench(String wanted) {
        return edit().text(FindKey.BENCH, wanted).find();
    }

    /** Returns this query for another operator. */
    public Find withOperator(String wanted) {
        return edit().text(FindKey.OPERATOR, wanted).find();
    }

    /** Returns this query for another mode, or for any. */
    public Find withMode(Optional<Mode> wanted) {
        return edit().mode(wanted).find();
    }

    /** Returns this query for another load in ohms, or for any. */
    public Find withLoadOhms(OptionalDouble wanted) {
        return edit().loadOhms(wanted).find();
    }

    /** Returns this query for another load. */
    public Find withLoadId(String wanted) {
        return edit().text(FindKey.LOAD, wanted).find();
    }

    /** Returns this query for another step. */
    public Find withStepId(String wanted) {
        return edit().text(FindKey.STEP, wanted).find();
    }

    /** Returns this query for entries from another moment on, or from the beginning. */
    public Find withFrom(Optional<Instant> wanted) {
        return edit().from(wanted).find();
    }

    /** Returns this query for entries before another moment, or to the end. */
    public Find withTo(Optional<Instant> wanted) {
        return edit().to(wanted).find();
    }

    /** Returns this query with other ranges of figures. */
    public Find withRanges(List<FigureRange> wanted) {
        return edit().ranges(wanted).find();
    }

    /** Returns this query for other states; none for all. */
    public Find withStates(Set<EntryState> wanted) {
        return edit().states(new LinkedHashSet<>(wanted)).find();
    }

    /** Returns this query for entries with an overdue instrument only, or for all. */
    public Find withOverdueOnly(boolean wanted) {
        return edit().overdueOnly(wanted).find();
    }

    private FindDraft edit() {
        return new FindDraft(this);
    }
}
