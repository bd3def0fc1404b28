// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.internal;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.ohmstead.lessons.LessonException;

/** The keys and values of a description, and which of them were asked for. */
public final class DescriptionKeys {
    private final String file;
    private final Map<String, String> values = new TreeMap<>();
    private final Map<String, String> left = new TreeMap<>();

    /** Makes it without keys; {@code file} is the name for messages. */
    public DescriptionKeys(String file) {
        this.file = file;
    }

    /**
     * Reads the file.
     *
     * @throws LessonException if a key comes twice, or the file is no properties file
     */
    public void load(Reader reader) throws IOException, LessonException {
        List<String> twice = new ArrayList<>();
        Properties properties = new Properties() {
            private static final long serialVersionUID = 1L;

            @Override
            public synchronized Object put(Object key, Object value) {
                if (values.put(key.toString(), value.toString().strip()) != null) {
                    twice.add(key.toString());
                }
                return null;
            }
        };
        try {
            properties.load(reader);
        } catch (IllegalArgumentException e) {
            throw Faults.because(e, "file.escape", file);
        }
        if (!twice.isEmpty()) {
            throw wrong(twice.get(0), "twice");
        }
        left.putAll(values);
    }

    /** Returns the value of a key, when it is there and not blank. */
    Optional<String> get(String key) {
        left.remove(key);
        return Optional.ofNullable(values.get(key)).filter(text -> !text.isBlank());
    }

    /** Returns the value of a key that must be there. */
    String need(String key, String example) throws LessonException {
        Optional<String> value = get(key);
        if (value.isEmpty()) {
            throw wrong(key, "missing", example);
        }
        return value.get();
    }

    /** Returns the values of key.1, key.2 and on. */
    List<String> numbered(String key) {
        List<String> found = new ArrayList<>();
        for (int n = 1; values.containsKey(key + "." + n); n++) {
            get(key + "." + n).ifPresent(found::add);
        }
        return found;
    }

    /** Returns a key that nobody asked for. */
    Optional<String> unknown() {
        return left.keySet().stream().findFirst();
    }

    /** Returns what is said to a key that is wrong; the text gets the file, the key and then the rest. */
    LessonException wrong(String key, String what, Object... further) {
        return Faults.of(
                "key." + what,
                Stream.concat(Stream.of(file, key), Arrays.stream(further)).toArray());
    }

    /** Returns the same with what led to it. */
    LessonException wrong(String key, LessonException cause) {
        return Faults.because(cause, "key.value", file, key, cause.getMessage());
    }
}
