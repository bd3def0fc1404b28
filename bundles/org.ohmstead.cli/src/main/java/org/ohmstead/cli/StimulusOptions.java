// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ohmstead.signal.stimulus.SignalDraft;
import org.ohmstead.signal.stimulus.SignalKind;
import org.ohmstead.signal.stimulus.Stimulus;
import org.ohmstead.signal.stimulus.StimulusRemark;
import org.ohmstead.signal.stimulus.TestSignal;
import org.ohmstead.units.Unit;
import picocli.CommandLine.Option;

/** What a test signal needs beside its kind and settings. */
final class StimulusOptions {
    private static final double LOWEST_RATE = 8_000;
    private static final double HIGHEST_RATE = 768_000;
    private static final double MOST_OVERLAP_DB = 40;

    @Option(
            names = "--sample-rate-hz",
            paramLabel = "F",
            defaultValue = "48000",
            descriptionKey = "stimulus.sample-rate-hz")
    private String sampleRateHz;

    @Option(names = "--exact-frequencies", descriptionKey = "stimulus.exact-frequencies")
    private boolean exactFrequencies;

    @Option(names = "--overlap-db", paramLabel = "DB", defaultValue = "0", descriptionKey = "stimulus.overlap-db")
    private String overlapDb;

    private static SignalKind kind(String name) throws InputException {
        Optional<SignalKind> kind = SignalKind.of(name);
        if (kind.isEmpty()) {
            List<String> names =
                    Arrays.stream(SignalKind.values()).map(SignalKind::id).toList();
            throw new InputException(Texts.of("stimulus.noKind", name, String.join(", ", names)));
        }
        return kind.get();
    }

    private static Map<String, String> settings(List<String> words) throws InputException {
        Map<String, String> settings = new LinkedHashMap<>();
        for (String word : words) {
            int equals = word.indexOf('=');
            if (equals < 1) {
                throw new InputException(Texts.of("stimulus.noSetting", word));
            }
            if (settings.put(word.substring(0, equals).strip(), word.substring(equals + 1)) != null) {
                throw new InputException(Texts.of("stimulus.twice", word.substring(0, equals)));
            }
        }
        return settings;
    }

    /** Returns the signal at the sample rate. */
    Stimulus stimulus(String kindName, List<String> words) throws InputException {
        SignalKind kind = kind(kindName);
        SignalDraft draft = kind.read(settings(words == null ? List.of() : words));
        if (draft instanceof SignalDraft.Refused refused) {
            String where = refused.settingId().isEmpty() ? "" : refused.settingId() + ": ";
            throw new InputException(where + refused.sentence());
        }
        int rate = rate();
        double overlap = Quantities.within(overlapDb, Unit.DECIBEL, 0, MOST_OVERLAP_DB, "--overlap-db");
        TestSignal signal = lowered(((SignalDraft.Made) draft).signal(), overlap);
        Optional<StimulusRemark> whyNot = Stimulus.whyNot(signal, rate);
        if (whyNot.isPresent()) {
            throw new InputException(whyNot.get().sentence());
        }
        Stimulus stimulus = Stimulus.of(signal, rate, !exactFrequencies);
        if (!stimulus.usable()) {
            throw new InputException(stimulus.remarks().get(0).sentence());
        }
        return stimulus;
    }

    private static TestSignal lowered(TestSignal signal, double overlapDb) throws InputException {
        if (signal.levelDbfs() - overlapDb < TestSignal.LOWEST_DBFS) {
            throw new InputException(Texts.of("stimulus.low", Texts.number(TestSignal.LOWEST_DBFS)));
        }
        return signal.lowered(overlapDb);
    }

    private int rate() throws InputException {
        double rate = Quantities.within(sampleRateHz, Unit.HERTZ, LOWEST_RATE, HIGHEST_RATE, "--sample-rate-hz");
        if (rate != Math.rint(rate)) {
            throw new InputException(Texts.of("stimulus.rate", sampleRateHz));
        }
        return (int) rate;
    }
}
