// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.scpi;

import java.io.IOException;
import java.util.function.Supplier;
import org.ohmstead.units.text.Said;

/** A link that failed by what we see of it; what the system says of a link it says in its own words. */
final class LinkFault extends IOException implements Said.Failure {
    private static final long serialVersionUID = 1L;

    private final Said reason;

    private LinkFault(Said reason, Throwable cause) {
        super(reason.kept(), cause);
        this.reason = reason;
    }

    /**
     * Makes a fault.
     *
     * @param reason a part of a sentence, in the language spoken when it is asked
     */
    static LinkFault of(Supplier<String> reason) {
        return of(reason, null);
    }

    static LinkFault of(Supplier<String> reason, Throwable cause) {
        return new LinkFault(Said.of(reason), cause);
    }

    @Override
    public Said said() {
        return reason;
    }
}
