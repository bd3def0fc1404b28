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
            description = "Samples per second (default 48000).")
    private String sampleRateHz;

    @Option(
            names = "--exact-frequencies",
            description =
                    "Keep frequencies and lengths as written; without it they give way by a little, so that whole cycles fill the"
                            + " length and the file can be repeated without a step.")
    private boolean exactFrequencies;

    @Option(
            names = "--overlap-db",
            paramLabel = "DB",
            defaultValue = "0",
            description = "Gain overlap: lowers the level by so much (default 0; 10 is common).")
    private String overlapDb;

    private static SignalKind kind(String name) throws InputException {
        Optional<SignalKind> kind = SignalKind.of(name);
        if (kind.isEmpty()) {
            List<String> names =
                    Arrays.stream(SignalKind.values()).map(SignalKind::id).toList();
            throw new InputException(
                    "There is no kind of signal \"" + name + "\". Choose one of: " + String.join(", ", names) + ".");
        }
        return kind.get();
    }

    private static Map<String, String> settings(List<String> words) throws InputException {
        Map<String, String> settings = new LinkedHashMap<>();
        for (String word : words) {
            int equals = word.indexOf('=');
            if (equals < 1) {
                throw new InputException(
                        "\"" + word + "\" is no setting. Write its name, =, and its value, such as frequency=1kHz.");
            }
            if (settings.put(word.substring(0, equals).strip(), word.substring(equals + 1)) != null) {
                throw new InputException(word.substring(0, equals) + " is set twice. Write it once.");
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
            throw new InputException("With the overlap the level is below " + Texts.number(TestSignal.LOWEST_DBFS)
                    + " dBFS. Choose a higher level.");
        }
        return signal.lowered(overlapDb);
    }

    private int rate() throws InputException {
        double rate = Quantities.within(sampleRateHz, Unit.HERTZ, LOWEST_RATE, HIGHEST_RATE, "--sample-rate-hz");
        if (rate != Math.rint(rate)) {
            throw new InputException("--sample-rate-hz is " + sampleRateHz + "; it must be a whole number.");
        }
        return (int) rate;
    }
}
