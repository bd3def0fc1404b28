// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.exchange.internal;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ohmstead.model.json.ProjectFile;
import org.ohmstead.testlog.TestLog;
import org.ohmstead.units.text.Messages;

/** Which files belong into a packed project, and why others do not. */
final class PackPlaces {
    private static final Messages TEXTS = Messages.of(PackPlaces.class);
    /** Name of what the pack says about itself. */
    static final String MANIFEST = "manifest.json";

    static final String CAPTURES = "captures";
    static final String SHEETS = "sheets";

    private static final Pattern CAPTURE = Pattern.compile("captures/([0-9a-f]{2})/(\\1[0-9a-f]{62})\\.[a-z0-9]{1,5}");
    private static final Pattern SHEET =
            Pattern.compile("sheets/[A-Za-z0-9][A-Za-z0-9 ()_.-]{0,150}\\.(html|pdf|png|svg|csv|xlsx|json|jsonl|txt)");
    private static final Pattern DEVICE = Pattern.compile("(?i)(con|prn|aux|nul|com\\d|lpt\\d)(\\..*)?");
    private static final Pattern FOLDER = Pattern.compile("(captures|sheets|captures/[0-9a-f]{2})/");

    private PackPlaces() {}

    /** Returns whether a name is that of a folder which only holds files that belong here. */
    static boolean isFolder(String name) {
        return FOLDER.matcher(name).matches();
    }

    /** Returns the hash that the name of a capture promises, or empty when it is no capture. */
    static Optional<String> captureHash(String name) {
        Matcher matcher = CAPTURE.matcher(name);
        return matcher.matches() ? Optional.of(matcher.group(2)) : Optional.empty();
    }

    /** Returns why a name does not belong into a pack, to follow its name in a sentence, or empty when it does. */
    static Optional<String> refusal(String name) {
        if (name.startsWith("/") || name.startsWith("\\") || name.matches("(?s)[A-Za-z]:.*")) {
            return Optional.of(TEXTS.text("place.fixed"));
        }
        if (name.matches("(?s)(.*[/\\\\])?\\.\\.([/\\\\].*)?")) {
            return Optional.of(TEXTS.text("place.out"));
        }
        if (name.indexOf('\\') >= 0 || name.chars().anyMatch(Character::isISOControl)) {
            return Optional.of(TEXTS.text("place.character"));
        }
        return belongs(name) ? Optional.empty() : Optional.of(TEXTS.text("place.none"));
    }

    private static boolean belongs(String name) {
        boolean known = name.equals(MANIFEST)
                || name.equals(ProjectFile.FILE_NAME)
                || name.equals(TestLog.FILE_NAME)
                || CAPTURE.matcher(name).matches()
                || SHEET.matcher(name).matches();
        return known
                && !DEVICE.matcher(name.substring(name.lastIndexOf('/') + 1)).matches();
    }

    /** Returns what two names have in common that some disks cannot tell apart. */
    static String folded(String name) {
        return Normalizer.normalize(name, Normalizer.Form.NFC)
                .toUpperCase(Locale.ROOT)
                .toLowerCase(Locale.ROOT);
    }
}
