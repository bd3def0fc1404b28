// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class SignalKindTest {
    private static TestSignal made(SignalKind kind, Map<String, String> texts) {
        return ((SignalDraft.Made) kind.read(texts)).signal();
    }

    private static SignalDraft.Refused refused(SignalKind kind, Map<String, String> texts) {
        return (SignalDraft.Refused) kind.read(texts);
    }

    @ParameterizedTest
    @EnumSource(SignalKind.class)
    void theUsualSettingsMakeASignalOfTheKind(SignalKind kind) {
        TestSignal signal = made(kind, Map.of());
        assertTrue(Stimulus.whyNot(signal, 48_000).isEmpty());
        assertEquals(kind, Descriptions.kind(signal));
        assertEquals(kind, SignalKind.of(kind.id()).orElseThrow());
        for (SignalSetting setting : kind.settings()) {
            assertFalse(setting.label().isBlank());
            assertFalse(setting.hint().isBlank());
        }
    }

    @Test
    void readsWhatPeopleWrite() {
        assertEquals(
                new TestSignal.Sine(1500, -3.5, 0.25),
                made(SignalKind.SINE, Map.of("frequency", "1k5", "level", "-3,5 dBFS", "length", "250 ms")));
        TestSignal.ToneBursts off =
                (TestSignal.ToneBursts) made(SignalKind.TONE_BURSTS, Map.of("between", " ", "on", "10 ms"));
        assertEquals(0, off.pattern().lowRatio());
        assertEquals(0.01, off.pattern().onSeconds());
        assertEquals(
                TestSignal.ToneBursts.USUAL,
                ((TestSignal.ToneBursts) made(SignalKind.TONE_BURSTS, Map.of())).pattern());
        TestSignal.MultiTone tones =
                (TestSignal.MultiTone) made(SignalKind.MULTI_TONE, Map.of("tones", "2 kHz@-6 dB, 100; 1000"));
        assertEquals(
                List.of(new TestSignal.Tone(100, 0), new TestSignal.Tone(1000, 0), new TestSignal.Tone(2000, -6)),
                tones.tones());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "SINE; frequency; nothing; does not begin with a number",
                "SINE; frequency; 0; 0.1 to 192000 Hz",
                "SINE; level; 1; -140 to 0 dB",
                "SINE; length; 5 V; not a unit",
                "TONE_BURSTS; period; 10 ms; must not be longer than its period",
                "PINK_NOISE; crest; 20; 6 to 12.5 dB",
                "PINK_NOISE; seed; 1.5; whole number",
                "PINK_NOISE; to; 30 Hz; an octave",
                "LOG_SWEEP; fade-in; 25 s; both fades",
                "LOG_SWEEP; to; 20 Hz; another frequency",
                "STEPPED_SWEEP; step; 600 s; at most",
                "MULTI_TONE; tones; 100, 100; each frequency once",
                "MODULATION_PAIR; high; 50 Hz; above the lower one",
            })
    void saysWhichSettingIsWrongAndWhy(SignalKind kind, String setting, String text, String part) {
        SignalDraft.Refused refused = refused(kind, Map.of(setting, text));
        assertEquals(setting, refused.settingId());
        String sentence = refused.sentence().toLowerCase(Locale.ROOT);
        assertTrue(sentence.contains(part.toLowerCase(Locale.ROOT)), refused.sentence());
    }

    @Test
    void aSettingOfAnotherKindIsRefused() {
        SignalDraft.Refused refused = refused(SignalKind.SINE, Map.of("crest", "12"));
        assertEquals("", refused.settingId());
        assertTrue(refused.sentence().contains("frequency, level, length"), refused.sentence());
    }

    @Test
    void everyTextIsThereInGerman() throws Exception {
        assertEquals(keys("messages.properties"), keys("messages_de.properties"));
        assertEquals("Tonimpulse", SignalKind.TONE_BURSTS.label(Locale.GERMAN));
    }

    private static Set<Object> keys(String name) throws Exception {
        Properties texts = new Properties();
        try (var in = SignalKind.class.getResourceAsStream(name)) {
            texts.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        }
        return new HashSet<>(texts.keySet());
    }
}
