// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ohmstead.measure.BenchDriver;
import org.ohmstead.measure.DriverInfo;
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
}
