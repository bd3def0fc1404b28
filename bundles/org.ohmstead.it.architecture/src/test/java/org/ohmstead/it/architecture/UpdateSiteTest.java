// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What the update site offers to those who have the product: modules that are not in it already. */
class UpdateSiteTest {
    private static final Pattern CATEGORY_OF_FEATURE =
            Pattern.compile("<feature id=\"([^\"]+)\"[^>]*>\\s*<category name=\"([^\"]+)\"");
    private static final Pattern PLUGIN = Pattern.compile("<plugin id=\"(org\\.ohmstead[^\"]*)\"");

    @Test
    void everyOfferedFeatureStandsInACategoryWithALabel() throws IOException {
        String site = site();
        Matcher offered = CATEGORY_OF_FEATURE.matcher(site);
        int count = 0;
        while (offered.find()) {
            count++;
            assertTrue(Files.exists(feature(offered.group(1))), "there is no feature " + offered.group(1));
            assertTrue(
                    site.matches(
                            "(?s).*<category-def name=\"" + Pattern.quote(offered.group(2)) + "\" label=\"[^\"]+\".*"),
                    "the category has no label: " + offered.group(2));
        }
        assertTrue(count > 0, "the site offers nothing");
    }

    @Test
    void everyPluginOfAFeatureIsABundleOfThisCheckout() throws IOException {
        for (String id : offeredFeatures()) {
            List<String> plugins = plugins(id);
            assertFalse(plugins.isEmpty(), id + " has no plug-in");
            for (String plugin : plugins) {
                Path bundle = Bundles.root().resolve("bundles").resolve(plugin);
                assertTrue(Files.exists(bundle.resolve("META-INF/MANIFEST.MF")), id + " names no bundle: " + plugin);
            }
        }
    }

    @Test
    void offersNothingThatTheProductHasAlready() throws IOException {
        Set<String> shipped = new TreeSet<>(plugins("org.ohmstead.feature"));
        for (String id : offeredFeatures()) {
            for (String plugin : plugins(id)) {
                assertFalse(shipped.contains(plugin), plugin + " is in the product and on the update site");
            }
        }
    }

    private static String site() throws IOException {
        return Files.readString(Bundles.root().resolve("product/category.xml"));
    }

    private static Path feature(String id) {
        return Bundles.root().resolve("features").resolve(id).resolve("feature.xml");
    }

    private static List<String> offeredFeatures() throws IOException {
        List<String> offered = new ArrayList<>();
        Matcher features = CATEGORY_OF_FEATURE.matcher(site());
        while (features.find()) {
            offered.add(features.group(1));
        }
        return offered;
    }

    private static List<String> plugins(String feature) throws IOException {
        List<String> plugins = new ArrayList<>();
        Matcher named = PLUGIN.matcher(Files.readString(feature(feature)));
        while (named.find()) {
            plugins.add(named.group(1));
        }
        return plugins;
    }
}
