// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the documents say is there, and what is there is in the documents. */
class DocumentsTest {
    private static final Pattern JSON_KEY = Pattern.compile("\"([a-zA-Z0-9]+)\"\\s*:");
    private static final Pattern MARKDOWN_LINK = Pattern.compile("\\]\\(([^)#:]+)\\)");

    @Test
    void theReadmeNamesEveryFieldOfTheDemoProject() throws IOException {
        String readme = Files.readString(Bundles.root().resolve("README.md"));
        Matcher keys = JSON_KEY.matcher(Files.readString(DemoData.path("larkspur.ohmstead/project.json")));
        Set<String> missing = new TreeSet<>();
        int found = 0;
        while (keys.find()) {
            found++;
            if (!readme.contains("`" + keys.group(1) + "`")) {
                missing.add(keys.group(1));
            }
        }
        assertTrue(found > 100, "only " + found + " keys");
        assertTrue(missing.isEmpty(), "not in README.md: " + missing);
    }

    @Test
    void everyLinkLeadsSomewhere() throws IOException {
        for (String document : new String[] {"README.md", "DEVELOPERS.md"}) {
            Matcher links =
                    MARKDOWN_LINK.matcher(Files.readString(Bundles.root().resolve(document)));
            while (links.find()) {
                assertTrue(Files.exists(Bundles.root().resolve(links.group(1))), document + ": " + links.group(1));
            }
        }
    }

    @Test
    void theDevelopersGuideListsEveryShippedBundle() throws IOException {
        String guide = Files.readString(Bundles.root().resolve("DEVELOPERS.md"));
        for (Path bundle : Bundles.all()) {
            String name = bundle.getFileName().toString().replace("org.ohmstead.", "");
            assertTrue(guide.contains("`" + name + "`") || guide.contains("`org.ohmstead." + name + "`"), name);
        }
    }

    @Test
    void thirdPartyNoticesNameEveryLibraryOfTheTarget() throws IOException {
        String notices = Files.readString(Bundles.root().resolve("product/THIRD-PARTY.md"))
                .toLowerCase(java.util.Locale.ROOT);
        String target = Files.readString(Bundles.root().resolve("product/platform.target"));
        String libraries = target.substring(target.indexOf("label=\"Libraries\""), target.indexOf("label=\"Installer"));
        Stream.of(libraries.split("<dependency>")).skip(1).forEach(dependency -> {
            String artifact = dependency.replaceAll("(?s).*<artifactId>([^<]+)<.*", "$1");
            String version = dependency.replaceAll("(?s).*<version>([0-9]+\\.[0-9]+)[^<]*<.*", "$1");
            String word = artifact.replaceAll("(?i)^(jackson|hipparchus|openhtmltopdf|batik)-.*", "$1")
                    .replace("commons-logging", "commons logging")
                    .replace("graphics2d", "pdfbox-graphics2d")
                    .replace("sqlite-jdbc", "sqlite jdbc");
            assertTrue(notices.contains(word.toLowerCase(java.util.Locale.ROOT)), artifact);
            assertTrue(notices.contains(version), artifact + " " + version);
        });
    }
}
