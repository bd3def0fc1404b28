// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
import org.ohmstead.measure.MeasurementException;
import org.ohmstead.measure.Setting;
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
        List<BenchDriver> all = List.of(new ScpiBenchDriver());
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

    private static MeasurementException refusal(String text) {
        return assertThrows(MeasurementException.class, () -> CommandSetReader.read("own", "own.commands", text));
    }

    @Test
    void faultsInGerman() throws Exception {
        System.setProperty(Language.PROPERTY, "de");
        MeasurementException refused =
                refusal("name = Own\nrole = multimeter\n[read volts]\n[measure volts]\nREAD? -> number\n");
        assertEquals(
                "Der Befehlssatz „own.commands“ ist nicht brauchbar. Zeile 3 von „own.commands“: Die Rolle"
                        + " „multimeter“ hat kein [read volts]; sie hat [start], [measure volts], [measure amps], [measure"
                        + " temperature].",
                refused.getLocalizedMessage());
        System.setProperty(Language.PROPERTY, "en");
        assertEquals(
                refusal("name = Own\nrole = multimeter\n[read volts]\n[measure volts]\nREAD? -> number\n")
                        .getMessage(),
                refused.getMessage());
        System.setProperty(Language.PROPERTY, "de");
        try (InstrumentServer server = new InstrumentServer((line, reply) -> reply.line("9.9E37"));
                ScpiConnection connection = ScpiConnection.open(server.address(), ScpiOptions.USUAL)) {
            MeasurementException overload =
                    assertThrows(MeasurementException.class, () -> connection.queryNumber("MEAS:VOLT?"));
            assertEquals(
                    "Das Gerät an " + server.address() + " hat nach „MEAS:VOLT?“ Überlast gemeldet (9.9E37). Was es"
                            + " misst, liegt über seinem Bereich: einen höheren Bereich wählen oder die Verdrahtung"
                            + " prüfen.",
                    overload.getLocalizedMessage());
            System.setProperty(Language.PROPERTY, "en");
            assertEquals(
                    assertThrows(MeasurementException.class, () -> connection.queryNumber("MEAS:VOLT?"))
                            .getMessage(),
                    overload.getMessage(),
                    "what the log keeps");
        }
        System.setProperty(Language.PROPERTY, "de");
        assertEquals("14,4", Show.said(14.4));
        assertEquals("14.4", Show.number(14.4));
    }
}
