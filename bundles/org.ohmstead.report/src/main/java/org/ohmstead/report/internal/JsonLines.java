// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.report.internal;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringWriter;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.testlog.VoidNote;

/** Entries of the log as lines of JSON. */
public final class JsonLines {
    private static final ObjectMapper JSON = new ObjectMapper().enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);

    private JsonLines() {}

    /** Returns an entry as one line without its end. */
    public static String of(LogEntry entry) throws IOException {
        StringWriter line = new StringWriter();
        try (JsonGenerator json = JSON.getFactory().createGenerator(line)) {
            json.writeStartObject();
            json.writeNumberField("sequence", entry.sequence());
            json.writeStringField("kind", entry.kind().word());
            json.writeStringField("id", entry.id());
            json.writeStringField("recordedAt", entry.recordedAt().toString());
            json.writeStringField("previousHash", entry.previousHash());
            json.writeStringField("hash", entry.hash());
            json.writeBooleanField("voided", entry.voided());
            if (entry.voidedBy().isPresent()) {
                VoidNote note = entry.voidedBy().get();
                json.writeStringField("voidReason", note.reason());
                json.writeStringField("voidedBy", note.voidId());
            }
            writeBody(json, entry.bodyText());
            json.writeEndObject();
        }
        return line.toString();
    }

    private static void writeBody(JsonGenerator json, String body) throws IOException {
        if (isJson(body)) {
            json.writeFieldName("body");
            // Line breaks can stand only between the parts of a JSON text, never within a string, so nothing changes.
            json.writeRawValue(body.replace('\n', ' ').replace('\r', ' '));
        } else {
            json.writeStringField("unreadableBody", body);
        }
    }

    private static boolean isJson(String text) {
        try {
            return !JSON.readTree(text).isMissingNode();
        } catch (JsonProcessingException e) {
            // That the text is no JSON is the answer, not a failure: the entry is exported all the same.
            return false;
        }
    }
}
