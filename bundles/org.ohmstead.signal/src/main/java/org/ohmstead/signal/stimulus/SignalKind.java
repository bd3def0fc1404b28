// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Messages;

/** The kinds of signals by name, with what is to be set for each: the common ground of command line and workbench. */
public enum SignalKind {
    /** One sine. */
    SINE("sine", Settings::sine, Usual.FREQUENCY, Usual.LEVEL, Usual.LENGTH),
    /** Several sines at once. */
    MULTI_TONE("multi-tone", Settings::multiTone, Usual.TONES, Usual.RMS_LEVEL, Usual.LENGTH),
    /** A sine that stays at one frequency after the other. */
    STEPPED_SWEEP(
            "stepped-sweep",
            Settings::steppedSweep,
            Usual.FROM,
            Usual.TO,
            SignalSetting.quantity("steps", Unit.NONE, "3", 1, 48),
            SignalSetting.quantity("step", Unit.SECOND, "2 s", 0.01, 600),
            Usual.LEVEL),
    /** A sine whose frequency rises steadily. */
    LOG_SWEEP(
            "log-sweep",
            Settings::logSweep,
            Usual.FROM,
            Usual.TO,
            Usual.LEVEL,
            SignalSetting.quantity("length", Unit.SECOND, "20 s", 0.01, TestSignal.LONGEST_SECONDS),
            SignalSetting.quantity("fade-in", Unit.SECOND, "50 ms", 0, 600),
            SignalSetting.quantity("fade-out", Unit.SECOND, "20 ms", 0, 600)),
    /** A sine that is loud for a moment in each period. */
    TONE_BURSTS(
            "tone-bursts",
            Settings::toneBursts,
            Usual.FREQUENCY,
            Usual.LEVEL,
            SignalSetting.quantity("on", Unit.SECOND, "20 ms", 1e-4, 3600),
            SignalSetting.quantity("period", Unit.SECOND, "500 ms", 1e-3, 3600),
            new SignalSetting("between", Unit.DECIBEL, "-20 dB", -140, 0, SignalSetting.Form.OPTIONAL_QUANTITY),
            Usual.LENGTH),
    /** Noise with the same power in each octave. */
    PINK_NOISE(
            "pink-noise",
            Settings::pinkNoise,
            SignalSetting.quantity("level", Unit.DECIBEL, "-20 dB", TestSignal.LOWEST_DBFS, 0),
            SignalSetting.quantity("crest", Unit.DECIBEL, "12 dB", 6, 12.5),
            Usual.FROM,
            Usual.TO,
            new SignalSetting("seed", Unit.NONE, "1", 0, 1e9, SignalSetting.Form.WHOLE_NUMBER),
            Usual.LENGTH),
    /** A low and a high sine, for modulation distortion. */
    MODULATION_PAIR(
            "modulation-pair",
            Settings::pair,
            SignalSetting.quantity("low", Unit.HERTZ, "60 Hz", Checks.LOWEST_HZ, Checks.HIGHEST_HZ),
            SignalSetting.quantity("high", Unit.HERTZ, "7 kHz", Checks.LOWEST_HZ, Checks.HIGHEST_HZ),
            SignalSetting.quantity("ratio", Unit.NONE, "4", 0.01, 100),
            Usual.LEVEL,
            Usual.LENGTH),
    /** Two close sines, for difference-frequency distortion. */
    DIFFERENCE_PAIR(
            "difference-pair",
            Settings::pair,
            SignalSetting.quantity("low", Unit.HERTZ, "19 kHz", Checks.LOWEST_HZ, Checks.HIGHEST_HZ),
            SignalSetting.quantity("high", Unit.HERTZ, "20 kHz", Checks.LOWEST_HZ, Checks.HIGHEST_HZ),
            SignalSetting.quantity("ratio", Unit.NONE, "1", 0.01, 100),
            Usual.LEVEL,
            Usual.LENGTH),
    /** The sine before ratings are measured, at an eighth of rated power. */
    WARM_UP(
            "warm-up",
            Settings::warmUp,
            Usual.FREQUENCY,
            SignalSetting.quantity("rated-level", Unit.DECIBEL, "-10 dB", TestSignal.LOWEST_DBFS + 10, 0),
            SignalSetting.quantity("length", Unit.SECOND, "3600 s", 0.01, TestSignal.LONGEST_SECONDS));

    private final String id;
    private final Function<Settings, TestSignal> maker;
    private final List<SignalSetting> settings;

    SignalKind(String id, Function<Settings, TestSignal> maker, SignalSetting... settings) {
        this.id = id;
        this.maker = maker;
        this.settings = List.of(settings);
    }

    /** The settings that several kinds have. */
    private static final class Usual {
        private static final SignalSetting FREQUENCY =
                SignalSetting.quantity("frequency", Unit.HERTZ, "1 kHz", Checks.LOWEST_HZ, Checks.HIGHEST_HZ);
        private static final SignalSetting FROM =
                SignalSetting.quantity("from", Unit.HERTZ, "20 Hz", Checks.LOWEST_HZ, Checks.HIGHEST_HZ);
        private static final SignalSetting TO =
                SignalSetting.quantity("to", Unit.HERTZ, "20 kHz", Checks.LOWEST_HZ, Checks.HIGHEST_HZ);
        private static final SignalSetting LEVEL =
                SignalSetting.quantity("level", Unit.DECIBEL, "-10 dB", TestSignal.LOWEST_DBFS, 0);
        private static final SignalSetting RMS_LEVEL =
                SignalSetting.quantity("level", Unit.DECIBEL, "-20 dB", TestSignal.LOWEST_DBFS, 0);
        private static final SignalSetting LENGTH =
                SignalSetting.quantity("length", Unit.SECOND, "30 s", 0.01, TestSignal.LONGEST_SECONDS);
        private static final SignalSetting TONES = new SignalSetting(
                "tones",
                Unit.HERTZ,
                "100, 200, 400, 800, 1600, 3200, 6400, 12800",
                Checks.LOWEST_HZ,
                Checks.HIGHEST_HZ,
                SignalSetting.Form.TONES);

        private Usual() {}
    }

    /** Returns the name of the kind, the same in every language: "tone-bursts". */
    public String id() {
        return id;
    }

    /** Returns the kind of that name, or empty. */
    public static Optional<SignalKind> of(String id) {
        for (SignalKind kind : values()) {
            if (kind.id.equals(id)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }

    /** Returns what is to be set, in the order in which it is asked for. */
    public List<SignalSetting> settings() {
        return settings;
    }

    /** Returns its name for people, in the language spoken now. */
    public String label() {
        return label(Language.current());
    }

    /** Returns its name for people, in a language. */
    public String label(Locale locale) {
        return Messages.of(SignalKind.class, locale).text("kind." + id);
    }

    /** Returns what it is for, as a sentence in the language spoken now. */
    public String purpose() {
        return Messages.of(SignalKind.class).text("kind." + id + ".purpose");
    }

    /**
     * Reads settings.
     *
     * @param texts by the names of the settings; those that are left out are as usual
     */
    public SignalDraft read(Map<String, String> texts) {
        try {
            return new SignalDraft.Made(maker.apply(new Settings(this, texts)));
        } catch (Settings.RefusedSetting refused) {
            return new SignalDraft.Refused(refused.settingId(), refused.getMessage());
        }
    }
}
