// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.List;
import org.ohmstead.units.text.Messages;

/** What is to be said wherever a temperature, a fuse, a cable or a battery is shown. */
public final class SupplyCautions {
    private static final Messages TEXTS = Messages.of(SupplyCautions.class);

    /** For every figure about a fuse. */
    public static String fuses() {
        return TEXTS.text("caution.fuses");
    }

    /** For every figure about a battery. */
    public static String batteries() {
        return TEXTS.text("caution.batteries");
    }

    /** For every figure about a cable. */
    public static String cables() {
        return TEXTS.text("caution.cables");
    }

    /** For every temperature. */
    public static String hotParts() {
        return TEXTS.text("caution.hotParts");
    }

    /** For every circuit that is built after these figures. */
    public static String wiring() {
        return TEXTS.text("caution.wiring");
    }

    private SupplyCautions() {}

    /** Returns all of them, in the order in which they are to be read. */
    public static List<String> all() {
        return List.of(hotParts(), cables(), fuses(), batteries(), wiring());
    }
}
