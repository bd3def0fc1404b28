// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.search;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.ohmstead.model.Mode;
import org.ohmstead.testlog.EntryKind;

/** A query in the making. */
final class FindDraft {
    private final Map<FindKey, String> texts = new EnumMap<>(FindKey.class);
    private List<String> words;
    private Set<EntryKind> kinds;
    private Optional<Mode> mode;
    private OptionalDouble loadOhms;
    private Optional<Instant> from;
    private Optional<Instant> to;
    private List<FigureRange> ranges;
    private Set<EntryState> states;
    private boolean overdueOnly;

    FindDraft(Find start) {
        words = new ArrayList<>(start.words());
        kinds = new LinkedHashSet<>(start.kinds());
        texts.put(FindKey.CHAIN, start.chain());
        texts.put(FindKey.AMPLIFIER, start.amplifier());
        texts.put(FindKey.SERIAL, start.serialNumber());
        texts.put(FindKey.BENCH, start.bench());
        texts.put(FindKey.OPERATOR, start.operator());
        texts.put(FindKey.LOAD, start.loadId());
        texts.put(FindKey.STEP, start.stepId());
        mode = start.mode();
        loadOhms = start.loadOhms();
        from = start.from();
        to = start.to();
        ranges = new ArrayList<>(start.ranges());
        states = new LinkedHashSet<>(start.states());
        overdueOnly = start.overdueOnly();
    }

    Find find() {
        return new Find(
                words,
                kinds,
                texts.get(FindKey.CHAIN),
                texts.get(FindKey.AMPLIFIER),
                texts.get(FindKey.SERIAL),
                texts.get(FindKey.BENCH),
                texts.get(FindKey.OPERATOR),
                mode,
                loadOhms,
                texts.get(FindKey.LOAD),
                texts.get(FindKey.STEP),
                from,
                to,
                ranges,
                states,
                overdueOnly);
    }

    FindDraft text(FindKey key, String wanted) {
        texts.put(key, wanted);
        return this;
    }

    FindDraft words(List<String> wanted) {
        words = new ArrayList<>(wanted);
        return this;
    }

    FindDraft word(String wanted) {
        words.add(wanted);
        return this;
    }

    FindDraft kinds(Set<EntryKind> wanted) {
        kinds = wanted;
        return this;
    }

    FindDraft kind(EntryKind wanted) {
        kinds.add(wanted);
        return this;
    }

    FindDraft mode(Optional<Mode> wanted) {
        mode = wanted;
        return this;
    }

    FindDraft loadOhms(OptionalDouble wanted) {
        loadOhms = wanted;
        return this;
    }

    FindDraft from(Optional<Instant> wanted) {
        from = wanted;
        return this;
    }

    FindDraft to(Optional<Instant> wanted) {
        to = wanted;
        return this;
    }

    FindDraft ranges(List<FigureRange> wanted) {
        ranges = new ArrayList<>(wanted);
        return this;
    }

    FindDraft range(FigureRange wanted) {
        ranges.add(wanted);
        return this;
    }

    FindDraft states(Set<EntryState> wanted) {
        states = wanted;
        return this;
    }

    FindDraft state(EntryState wanted) {
        states.add(wanted);
        return this;
    }

    FindDraft overdueOnly(boolean wanted) {
        overdueOnly = wanted;
        return this;
    }
}
