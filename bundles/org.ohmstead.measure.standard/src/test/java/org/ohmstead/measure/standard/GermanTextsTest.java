// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.standard;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.FigureInfo;
import org.ohmstead.measure.Measurement;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.MeasurementInfo;
import org.ohmstead.measure.Readiness;
import org.ohmstead.measure.Setting;
import org.ohmstead.model.EndPoint;
import org.ohmstead.model.Mode;
import org.ohmstead.signal.CaptureException;
import org.ohmstead.signal.Waveform;
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Said;

/** Measurements say in German what they are, and are the same measurements. */
class GermanTextsTest {
    private static final List<Measurement> ALL = List.of(
            new BurstPower(),
            new ChannelMatch(),
            new ChannelSeparation(),
            new EfficiencyAndSupply(),
            new FrequencyResponse(),
            new GainAndSensitivity(),
            new IdleDraw(),
            new OutputImpedance(),
            new PowerAgainstFrequency(),
            new PowerAtEndPoint(),
            new ResidualNoise(),
            new SoundLevel());

    private String before;

    @BeforeEach
    void remember() {
        before = System.getProperty(Language.PROPERTY);
    }

    @AfterEach
    void restore() {
        if (before == null) {
            System.clearProperty(Language.PROPERTY);
        } else {
            System.setProperty(Language.PROPERTY, before);
        }
    }

    @Test
    void sameMeasurementsInOtherWords() {
        for (Measurement measurement : ALL) {
            System.setProperty(Language.PROPERTY, "en");
            MeasurementInfo english = measurement.info();
            System.setProperty(Language.PROPERTY, "de");
            MeasurementInfo german = measurement.info();

            assertEquals(english.id(), german.id());
            assertEquals(english.follows(), german.follows());
            assertNotEquals(english.name(), german.name());
            assertNotEquals(english.summary(), german.summary());
            for (int i = 0; i < english.settings().size(); i++) {
                Setting setting = english.settings().get(i);
                Setting other = german.settings().get(i);
                assertEquals(setting.id(), other.id());
                assertEquals(setting.defaultText(), other.defaultText());
                assertNotEquals(setting.name(), other.name());
                assertNotEquals(setting.help(), other.help());
            }
            assertEquals(
                    english.figures().stream().map(FigureInfo::id).toList(),
                    german.figures().stream().map(FigureInfo::id).toList());
            for (int i = 0; i < english.figures().size(); i++) {
                assertNotEquals(
                        english.figures().get(i).name(), german.figures().get(i).name());
            }
        }
    }

    @Test
    void choicesAreStoredInEnglishAndShownInGerman() {
        System.setProperty(Language.PROPERTY, "de");
        Setting.Choice against =
                (Setting.Choice) new SoundLevel().info().settings().get(0);

        assertEquals(List.of("frequency", "drive"), against.choices());
        assertEquals(List.of("Frequenz", "Aussteuerung"), against.labels());
        assertEquals("Aussteuerung", against.label("drive"));
    }

    @Test
    void whatGoesWrongIsKeptInEnglishAndShownInGerman() {
        System.setProperty(Language.PROPERTY, "de");
        Waveform silent = Waveform.of(48_000, new double[4800]);

        Said silence = assertThrows(
                        CaptureException.class,
                        () -> LevelAnalysis.analyze(
                                silent,
                                TestBench.subject(Mode.STEREO, new EndPoint.FixedLevel(-20))
                                        .load()
                                        .branches()
                                        .get(0),
                                1000))
                .said();
        assertNotEquals(silence.kept(), silence.shown());

        MeasurementException failed =
                Faults.because(new CaptureException(silence), "atLevel", "A", Said.number("%.1f", -20), silence);
        assertEquals("Channel A at -20.0 dB: " + silence.kept(), failed.getMessage());
        assertEquals("Kanal A bei -20,0 dB: " + silence.shown(), failed.getLocalizedMessage());

        EvaluationException none = Faults.evaluation("noRecordings", "s1");
        assertEquals("Zum Schritt „s1“ gibt es keine Aufnahmen. Zuerst seine Pegel aufnehmen.", none.getMessage());
        assertEquals(
                "The step \"s1\" has no recordings. Record its levels first.",
                none.said().kept());
    }

    @Test
    void notesAreKeptInEnglish() {
        System.setProperty(Language.PROPERTY, "de");
        assertEquals("The level rises as the drive does, within 0.5 dB.", SoundLevel.note("sound.straight", 0.5));
    }

    @Test
    void whatIsInTheWayIsSaidInGerman() {
        System.setProperty(Language.PROPERTY, "de");

        assertEquals(
                new Readiness.NotYet(
                        "Der Endpunkt des Schritts ist ein Pegel, die Suche hat also nichts zu suchen.",
                        "Eine Klirrfaktorgrenze oder den Einsatz der Übersteuerung wählen."),
                new PowerAgainstFrequency().readiness(TestBench.subject(Mode.STEREO, new EndPoint.FixedLevel(-20))));
        assertEquals(
                new Readiness.NotApplicable(
                        "Hier wird nur ein Kanal auf einmal gemessen, es gibt also nichts zu vergleichen."),
                new ChannelMatch().readiness(TestBench.subject(Mode.SINGLE, new EndPoint.FixedLevel(-20))));
    }
}
