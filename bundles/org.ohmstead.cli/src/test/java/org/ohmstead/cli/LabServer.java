// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.cli;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/** A PostgreSQL server for the words about the shared log, with an owner and some logins. Root starts it as another user. */
final class LabServer implements AutoCloseable {
    static final String OWNER = "labowner";
    static final String PASSWORD = "of this test";

    private static final Path INSTALLED = Path.of("/usr/lib/postgresql");
    private static final String SERVER_USER = "postgres";

    private final Path programs;
    private final Path folder;
    private final int port;

    private LabServer(Path programs, Path folder, int port) {
        this.programs = programs;
        this.folder = folder;
        this.port = port;
    }

    static LabServer start(String... logins) throws IOException, InterruptedException {
        Path programs = programs();
        Path folder = Files.createTempDirectory("ohmstead-lab");
        Path password = Files.writeString(folder.resolve("password"), PASSWORD);
        give(password);
        give(folder);
        int port;
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        LabServer server = new LabServer(programs, folder, port);
        String data = folder.resolve("data").toString();
        server.run(
                "",
                "initdb",
                "-D",
                data,
                "-U",
                OWNER,
                "-A",
                "scram-sha-256",
                "--pwfile",
                password.toString(),
                "-E",
                "UTF8",
                "--locale=C",
                "--no-sync");
        StringBuilder sql = new StringBuilder();
        for (String login : logins) {
            sql.append("CREATE ROLE ")
                    .append(login)
                    .append(" LOGIN PASSWORD '")
                    .append(PASSWORD)
                    .append("';\n");
        }
        server.run(sql.toString(), "postgres", "--single", "-D", data, "postgres");
        server.run(
                "",
                "pg_ctl",
                "-w",
                "-D",
                data,
                "-l",
                folder.resolve("server.log").toString(),
                "-o",
                "-p " + port + " -c listen_addresses=127.0.0.1 -c fsync=off -c unix_socket_directories=" + folder,
                "start");
        return server;
    }

    private static Path programs() throws IOException {
        Optional<Path> found = Optional.empty();
        if (Files.isDirectory(INSTALLED)) {
            try (Stream<Path> versions = Files.list(INSTALLED)) {
                found = versions.map(version -> version.resolve("bin"))
                        .filter(bin -> Files.isExecutable(bin.resolve("initdb")))
                        .max(Comparator.comparing(bin ->
                                Double.parseDouble(bin.getParent().getFileName().toString())));
            }
        }
        if (found.isEmpty()) {
            boolean couldBeInstalled =
                    System.getenv("CI") != null || isRoot() && Files.exists(Path.of("/usr/bin/apt-get"));
            String missing = "There is no PostgreSQL server on this machine (Debian: apt-get install postgresql).";
            Assertions.assertFalse(couldBeInstalled, missing + " product/ohmstead test brings it.");
            Assumptions.abort(missing + " Without it the words about the shared log are not tested.");
        }
        return found.get();
    }

    private static boolean isRoot() {
        return "root".equals(System.getProperty("user.name"));
    }

    /** Lets the server's user have a file or folder. */
    private static void give(Path path) throws IOException {
        if (isRoot()) {
            Files.setOwner(
                    path, path.getFileSystem().getUserPrincipalLookupService().lookupPrincipalByName(SERVER_USER));
        }
    }

    /** Runs a program of the server. */
    private void run(String input, String program, String... arguments) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>();
        if (isRoot()) {
            words.addAll(List.of("runuser", "-u", SERVER_USER, "--"));
        }
        words.add(programs.resolve(program).toString());
        words.addAll(List.of(arguments));
        Path log = folder.resolve(program + ".log");
        Process process = new ProcessBuilder(words)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        try (var stdin = process.outputWriter()) {
            stdin.write(input);
        }
        boolean ended = process.waitFor(2, TimeUnit.MINUTES);
        Assertions.assertTrue(ended && process.exitValue() == 0, program + " failed: " + Files.readString(log));
    }

    /** Does something behind the back of the shared log, as whoever owns the database can. */
    void sql(String statements) throws IOException, InterruptedException {
        String place =
                "host=127.0.0.1 port=" + port + " dbname=postgres user=" + OWNER + " password='" + PASSWORD + "'";
        run(statements, "psql", "-v", "ON_ERROR_STOP=1", place);
    }

    int port() {
        return port;
    }

    @Override
    public void close() throws IOException, InterruptedException {
        run("", "pg_ctl", "-w", "-m", "immediate", "-D", folder.resolve("data").toString(), "stop");
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        }
    }
}
