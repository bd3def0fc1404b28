// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.gain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Properties;
import org.junit.jupiter.api.Test;

class GainWordsTest {
    private static final GainSetup SETUP = GainSetup.withOverlap(5, 10, new GainTarget(100, 4, false));
    private final GainWords english = GainWords.of(Locale.ENGLISH);
    private final GainWords german = GainWords.of(Locale.GERMAN);

    @Test
    void theSummarySaysWhatToSetInEitherLanguage() {
        assertEquals(
                "Set the gain to 22.04 dB, so that 1.58 V at the input (-10 dBFS) gives 100 W in 4.00 \u03a9.",
                english.summary(SETUP));
        assertTrue(german.summary(SETUP).contains("1,58 V am Eingang (-10 dBFS)"), german.summary(SETUP));
    }

    @Test
    void fullScaleSaysWhetherItClips() {
        String clips = english.fullScale(SETUP);
        assertTrue(clips.contains("63.2 V, which would be 1000 W: 10 dB beyond clipping"), clips);
        assertTrue(clips.contains("173 W of a wave with 32.2 % distortion"), clips);
        String clean = english.fullScale(SETUP.withClipWatts(OptionalDouble.of(2000)));
        assertTrue(clean.endsWith("nothing clips."), clean);
    }

    @Test
    void theProcedureTellsSourceLevelAndMeterReading() {
        String procedure = english.procedure(SETUP.checkAt(-20));
        assertTrue(procedure.contains("-30 dBFS (0.158 V)"), procedure);
        assertTrue(procedure.contains("reads 2.00 V. That is 1.00 W, 20 dB below"), procedure);
        GainSetup weak = GainSetup.withOverlap(1, -30, SETUP.target());
        assertTrue(english.procedure(weak.checkAt(-20)).contains("cannot play 10 dBFS"));
    }

    @Test
    void aChangeHasADirectionUnlessItIsSmallEnough() {
        assertEquals("Turn the gain down by 1.5 dB.", english.change(-1.5, 0.1));
        assertEquals("Turn the gain up by 1.5 dB.", english.change(1.5, 0.1));
        assertEquals("The gain is right within 0.08 dB.", english.change(-0.08, 0.1));
        assertEquals("Die Verst\u00e4rkung um 1,5 dB verringern.", german.change(-1.5, 0.1));
    }

    @Test
    void theBalanceNamesTheLouderChannel() {
        String apart = english.balance(ChannelBalance.of(19.5, 20, 0.1));
        assertEquals(
                "Channel B is 0.22 dB above channel A (1.05 times the power): more than 0.1 dB apart. Turn B down or A up.",
                apart);
        assertTrue(english.balance(ChannelBalance.of(20, 19.5, 0.5)).endsWith("within 0.5 dB."));
    }

    @Test
    void loudspeakersOffAndHotLoadsAreAlwaysSaid() {
        List<String> calm = english.cautions(
                GainSetup.withOverlap(5, 0, new GainTarget(1, 4, false)),
                GainSetup.withOverlap(5, 0, new GainTarget(1, 4, false)).checkAt(-20));
        assertEquals(1, calm.size());
        assertTrue(calm.get(0).contains("loudspeakers off"), calm.get(0));
        assertTrue(calm.get(0).contains("hot enough to burn"), calm.get(0));
    }

    @Test
    void whatTheSetUpAsksForIsSaidFirst() {
        GainSetup bridged =
                GainSetup.withOverlap(5, 10, new GainTarget(1000, 2, true)).withClipWatts(OptionalDouble.of(500));
        List<String> cautions = english.cautions(bridged, bridged.checkAt(-20));
        assertEquals(5, cautions.size(), cautions.toString());
        assertTrue(cautions.get(0).contains("3.01 dB beyond clipping"), cautions.get(0));
        assertTrue(cautions.get(1).contains("times the power of the clean sine"), cautions.get(1));
        assertTrue(cautions.get(2).contains("10.0 W into the load"), cautions.get(2));
        assertTrue(cautions.get(3).contains("each channel sees 1.00 \u03a9"), cautions.get(3));
        GainSetup weak = GainSetup.withOverlap(5, -2, new GainTarget(100, 4, false));
        assertTrue(english.cautions(weak, weak.checkAt(-20)).get(0).contains("lacks 2 dB"));
    }

    @Test
    void theDecimalSignCanBeChosenApartFromTheLanguage() {
        assertEquals(
                "Turn the gain up by 1,6 dB.", english.withDecimalComma(true).change(1.6, 0));
        assertEquals(
                "Die Verst\u00e4rkung um 1.6 dB erh\u00f6hen.",
                german.withDecimalComma(false).change(1.6, 0));
    }

    @Test
    void bothLanguagesHaveTheSameTexts() throws IOException {
        Properties inEnglish = texts("messages.properties");
        Properties inGerman = texts("messages_de.properties");
        assertFalse(inEnglish.isEmpty());
        assertEquals(inEnglish.keySet(), inGerman.keySet());
        inEnglish.forEach((key, text) -> {
            for (int argument = 0; argument < 6; argument++) {
                String place = "{" + argument + "}";
                assertEquals(
                        text.toString().contains(place),
                        inGerman.getProperty(key.toString()).contains(place),
                        key + " " + place);
            }
        });
    }

    private static Properties texts(String name) throws IOException {
        Properties texts = new Properties();
        try (InputStream file = GainWords.class.getResourceAsStream(name);
                Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
            texts.load(reader);
        }
        return texts;
    }
}
