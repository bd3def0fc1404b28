// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.model.SharedLog;
import org.ohmstead.testlog.shared.SharedLabException.Reason;

class LabAddressTest {
    @TempDir
    Path folder;

    private static LabAddress at(String host) {
        return new LabAddress(host, 5432, "ohm", Optional.empty());
    }

    @ParameterizedTest
    @ValueSource(strings = {"localhost", "LocalHost", "127.0.0.1", "127.1.2.3", "::1", "[::1]"})
    void knowsThisComputer(String host) {
        assertTrue(at(host).local());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "lab.example",
                "10.0.0.5",
                "128.0.0.1",
                "localhost.example",
                "127.0.0.1.example",
                "127.1",
                "2130706433",
                "0.0.0.0",
                "::2",
                "notlocalhost"
            })
    void takesEverythingElseForTheNetwork(String host) {
        assertFalse(at(host).local());
    }

    @ParameterizedTest
    @CsvSource({"'',ohm,b1,the server", "h,'',b1,the database", "h,ohm,'',this bench"})
    void saysWhatTheProjectLacks(String host, String database, String bench, String part) {
        SharedLabException failure = assertThrows(
                SharedLabException.class, () -> LabAddress.of(new SharedLog(host, 5432, database, bench, ""), folder));
        assertEquals(Reason.SETTINGS, failure.reason());
        assertTrue(failure.getMessage().contains(part), failure.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"/var/run/postgresql", "host/path", "a b", "user@host", "h?sslmode=disable", "h,other"})
    void refusesWhatIsNoNameOfAServer(String host) {
        SharedLabException failure = assertThrows(
                SharedLabException.class, () -> LabAddress.of(new SharedLog(host, 5432, "ohm", "b1", ""), folder));
        assertEquals(Reason.SETTINGS, failure.reason());
    }

    @Test
    void theCertificateLiesInTheProject() throws Exception {
        Path file = Files.writeString(folder.resolve("lab.crt"), "x");
        LabAddress address = LabAddress.of(new SharedLog("h", 5433, "ohm", "b1", "lab.crt"), folder);
        assertEquals(Optional.of(file), address.certificate());
        assertEquals("h:5433/ohm", address.toString());
        SharedLabException missing = assertThrows(
                SharedLabException.class,
                () -> LabAddress.of(new SharedLog("h", 5432, "ohm", "b1", "none.crt"), folder));
        assertTrue(missing.getMessage().contains("none.crt"), missing.getMessage());
    }
}
