// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.stimulus;

import java.util.List;
import java.util.Locale;
import org.ohmstead.units.text.Language;
import org.ohmstead.units.text.Messages;

/**
 * Something that whoever uses a signal should know.
 *
 * @param key its name: "burstParts", "overFullScale" and so on
 * @param prevents whether the signal cannot be made as it is
 * @param arguments the figures in the sentence
 */
public record StimulusRemark(String key, boolean prevents, List<Object> arguments) {
    /** Copies the figures. */
    public StimulusRemark {
        arguments = List.copyOf(arguments);
    }

    static StimulusRemark note(String key, Object... arguments) {
        return new StimulusRemark(key, false, List.of(arguments));
    }

    static StimulusRemark refusal(String key, Object... arguments) {
        return new StimulusRemark(key, true, List.of(arguments));
    }

    /** Returns the remark as whole sentences in the language spoken now. */
    public String sentence() {
        return sentence(Language.current());
    }

    /** Returns the remark as whole sentences in a language. */
    public String sentence(Locale locale) {
        return Messages.of(StimulusRemark.class, locale).text("remark." + key, arguments.toArray());
    }
}
