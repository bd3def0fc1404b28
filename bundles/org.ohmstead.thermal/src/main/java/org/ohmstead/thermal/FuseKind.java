// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.Locale;
import java.util.Optional;
import org.ohmstead.units.text.Messages;

/** Kinds of fuse that there is a table for. */
public enum FuseKind {
    /** Blade fuses of road vehicles, miniature to medium: types C and F of ISO 8820-3. */
    BLADE,
    /** Large blade fuses of road vehicles: type E of ISO 8820-3. */
    LARGE_BLADE,
    /** Cartridge fuses of UL 248-14. */
    CARTRIDGE;

    private static final Messages TEXTS = Messages.of(FuseKind.class);

    /** Returns what a person calls it. */
    public String words() {
        return TEXTS.text("fuse." + name());
    }

    /**
     * Returns the kind that a style of the amplifier's fuse names, such as "large blade", "blade", "cartridge",
     * "glass"; else empty.
     */
    public static Optional<FuseKind> of(String style) {
        String text = Checks.present(style, "style").toLowerCase(Locale.ROOT);
        if (text.contains("blade")) {
            return Optional.of(text.contains("large") ? LARGE_BLADE : BLADE);
        }
        return text.contains("cartridge") || text.contains("glass") ? Optional.of(CARTRIDGE) : Optional.empty();
    }
}
