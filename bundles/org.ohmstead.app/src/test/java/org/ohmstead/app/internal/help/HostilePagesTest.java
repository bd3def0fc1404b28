// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pages of modules that want to read a file of the user, or to fill the memory. */
class HostilePagesTest {
    private static final Duration SOON = Duration.ofSeconds(30);
    private static final String BOMB = "<!DOCTYPE html [<!ENTITY a \"aaaaaaaaaaaaaaaaaaaa\">"
            + "<!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;\">"
            + "<!ENTITY c \"&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;\">"
            + "<!ENTITY d \"&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;\">"
            + "<!ENTITY x \"&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;&d;\">]>";

    @TempDir
    Path folder;

    private static ByteArrayInputStream stream(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }

    private static String page(String type) {
        return type + "<html><head><title>T</title></head><body><h1>T</h1><p>before &x; after</p></body></html>";
    }

    private static String steps(String type) {
        return type + "<cheatsheet title=\"T\"><intro><description>before &x; after</description></intro>"
                + "<item title=\"one\"><description>&x;</description></item></cheatsheet>";
    }

    @Test
    void bombsEndInAFault() {
        assertTimeoutPreemptively(
                SOON,
                () -> assertThrows(HelpException.class, () -> HelpPageParser.parse("a.html", stream(page(BOMB)))));
        assertTimeoutPreemptively(
                SOON, () -> assertThrows(HelpException.class, () -> StepSheet.read("a", stream(steps(BOMB)))));
    }

    @Test
    void filesOfTheUserAreNotRead() throws Exception {
        Path secret = Files.writeString(folder.resolve("secret.txt"), "only for the user");
        String type = "<!DOCTYPE html [<!ENTITY x SYSTEM \"" + secret.toUri() + "\">]>";
        assertThrows(HelpException.class, () -> StepSheet.read("a", stream(steps(type))));
        String shown;
        try {
            shown = HelpPageParser.parse("a.html", stream(page(type))).toString();
        } catch (HelpException refused) {
            shown = refused.getMessage();
        }
        assertFalse(shown.contains("only for"), shown);
    }
}
