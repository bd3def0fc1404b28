// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.Bench;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.Feed;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Setting;
import org.ohmstead.measure.Settings;
import org.ohmstead.measure.Subject;
import org.ohmstead.model.Mode;
import org.ohmstead.model.SupplyType;
import org.ohmstead.units.text.Language;

/** Drivers say in German what they are, and are the same drivers. */
class GermanTextsTest {
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
    void sameDriversInOtherWords() {
        List<BenchDriver> all = List.of(
                new SimulatedBenchDriver(),
                new SoundCardBenchDriver(),
                new ReplayedBenchDriver((folder, subject) -> List.of()),
                new TypedBenchDriver(new Person()));
        for (BenchDriver driver : all) {
            System.setProperty(Language.PROPERTY, "en");
            DriverInfo english = driver.info();
            System.setProperty(Language.PROPERTY, "de");
            DriverInfo german = driver.info();

            assertEquals(english.id(), german.id());
            assertNotEquals(english.name(), german.name());
            assertNotEquals(english.summary(), german.summary());
            for (int i = 0; i < english.settings().size(); i++) {
                Setting setting = english.settings().get(i);
                Setting other = german.settings().get(i);
                assertEquals(setting.id(), other.id());
                assertEquals(setting.defaultText(), other.defaultText());
                assertNotEquals(setting.name(), other.name());
                assertNotEquals(setting.help(), other.help(), setting.id());
            }
        }
    }

    @Test
    void faultsAreStoredInEnglishAndShownInGerman() {
        System.setProperty(Language.PROPERTY, "de");
        Setting.Choice fault = new SimulatedBenchDriver()
                .info().settings().stream()
                        .filter(setting -> setting.id().equals("fault"))
                        .map(Setting.Choice.class::cast)
                        .findFirst()
                        .orElseThrow();

        assertEquals("none", fault.defaultText());
        assertEquals("Sicherung durchgebrannt", fault.label("blown fuse"));
    }

    @Test
    void personIsToldWhatToDoInGerman() throws Exception {
        System.setProperty(Language.PROPERTY, "de");
        Subject subject = Subjects.of(2, SupplyType.REGULATED, Mode.STEREO);
        Person person = new Person();
        TypedBenchDriver driver = new TypedBenchDriver(person, Clock.systemUTC());
        try (Bench bench = driver.open(subject, Settings.of(driver.info().settings(), Map.of()))) {
            bench.connect(Mode.STEREO, subject.load());
            bench.setSupplyVolts(14.4);
            bench.feed(Feed.Tone.of(1000, -20));
            assertThrows(MeasurementException.class, bench::observe);
        }

        assertEquals(
                List.of(
                        "Die Last „4ohm“ (4 Ohm) anschließen, Stereo.",
                        "Die Versorgung an den Klemmen des Verstärkers auf 14,40 V einstellen.",
                        "Einen Sinus von 1000 Hz mit -20,00 dB in alle Kanäle einspeisen.",
                        "Versorgungsspannung an den Klemmen",
                        "Versorgungsspannung an den Klemmen: 400,5 V kann nicht sein; der Wert muss zwischen 0 V und"
                                + " 60 V liegen."),
                person.heard.subList(0, 5));
        assertEquals(
                "Jetzt die Quelle ausschalten und die Versorgung abschalten.",
                person.heard.get(person.heard.size() - 1));
    }

    @Test
    void whatGoesWrongIsKeptInEnglishAndShownInGerman() throws Exception {
        System.setProperty(Language.PROPERTY, "de");
        Subject subject = Subjects.of(2, SupplyType.REGULATED, Mode.STEREO);
        SimulatedBenchDriver driver = new SimulatedBenchDriver();
        try (Bench bench = driver.open(subject, Settings.of(driver.info().settings(), Map.of()))) {
            MeasurementException failed = assertThrows(MeasurementException.class, () -> bench.acquire(0.1));
            assertEquals("No load is connected. Connect a load before anything is recorded.", failed.getMessage());
            assertEquals(
                    "Es ist keine Last angeschlossen. Eine Last anschließen, bevor etwas aufgenommen wird.",
                    failed.getLocalizedMessage());
        }
        TypedBenchDriver typed = new TypedBenchDriver(new Person(), Clock.systemUTC());
        try (Bench bench = typed.open(subject, Settings.of(typed.info().settings(), Map.of()))) {
            bench.connect(Mode.STEREO, subject.load());
            bench.setSupplyVolts(14.4);
            bench.feed(Feed.Tone.of(1000, -20));
            MeasurementException failed = assertThrows(MeasurementException.class, bench::observe);
            assertEquals(
                    "No usable value was given for the supply volts at the terminals. Check the instrument, and start"
                            + " again.",
                    failed.getMessage());
            assertEquals(
                    "Versorgungsspannung an den Klemmen: Es wurde kein brauchbarer Wert angegeben. Das Messgerät prüfen"
                            + " und neu beginnen.",
                    failed.getLocalizedMessage());
        }
    }

    /** Does as told, and misreads the meter. */
    private static final class Person implements OperatorPort {
        private final List<String> heard = new ArrayList<>();

        @Override
        public OptionalDouble ask(Question question) {
            heard.add(question.what());
            return OptionalDouble.of(400.5);
        }

        @Override
        public Optional<String> askText(String what) {
            heard.add(what);
            return Optional.empty();
        }

        @Override
        public boolean confirm(String sentences) {
            heard.add(sentences);
            return true;
        }

        @Override
        public void warn(String sentences) {
            heard.add(sentences);
        }
    }
}
