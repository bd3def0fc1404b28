// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal;

import java.util.List;

/** What is to be said wherever a temperature, a fuse, a cable or a battery is shown. */
public final class SupplyCautions {
    /** For every figure about a fuse. */
    public static final String FUSES = "A fuse protects the cable against fire, not the amplifier. Choose it by the"
            + " cable, the fuse maker's own curve and the local code, never by this forecast alone, and never replace it"
            + " with a larger one.";

    /** For every figure about a battery. */
    public static final String BATTERIES =
            "A battery can drive thousands of amperes through a slipped tool and give off gas that explodes. Fuse it"
                    + " at its terminal, keep sparks and metal away, let air through, and wear eye protection. The figures"
                    + " take it as volts behind a resistance; charge, age and cold are not in them.";

    /** For every figure about a cable. */
    public static final String CABLES = "The heat of a cable is estimated for a single lead in still air. Bundles,"
            + " conduits, carpets and loose terminals are hotter. What a cable may carry is for the local code and a"
            + " licensed person to say.";

    /** For every temperature. */
    public static final String HOT_PARTS =
            "Load resistors and heat sinks can be hot enough to burn skin and set fire to what touches them, and stay"
                    + " so for minutes after the signal has stopped. Keep hands and cables away, and measure before you"
                    + " touch.";

    /** For every circuit that is built after these figures. */
    public static final String WIRING = "Local codes and licensed practice come before anything that is forecast here.";

    private SupplyCautions() {}

    /** Returns all of them, in the order in which they are to be read. */
    public static List<String> all() {
        return List.of(HOT_PARTS, CABLES, FUSES, BATTERIES, WIRING);
    }
}
