// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.nio.file.attribute.UserPrincipalNotFoundException;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;
import org.postgresql.ds.PGSimpleDataSource;

/**
 * A PostgreSQL server of a test's own: its data in a new folder, on a free port of the loopback. PostgreSQL refuses to run as root, so root
 * starts it as another user.
 */
final class PostgresServer implements AutoCloseable {
    static final String OWNER = "the_owner";
    static final String PASSWORD = "right horse: battery\\staple";

    private static final Path INSTALLED = Path.of("/usr/lib/postgresql");
    private static final Path PACKAGES = Path.of("/usr/bin/apt-get");
    private static final String SERVER_USER = "postgres";
    private static final int START_SECONDS = 60;
    private static final AtomicInteger DATABASES = new AtomicInteger();

    private final Path programs;
    private final Path folder;
    private final int port;
    private final List<String> settings;
    private Process process;
    private String template = "";

    private PostgresServer(Path programs, Path folder, int port, List<String> settings) {
        this.programs = programs;
        this.folder = folder;
        this.port = port;
        this.settings = settings;
    }

    /** Makes and starts a server. The test is skipped only where no server can be installed. */
    static PostgresServer start(String... settings) throws IOException, InterruptedException {
        Path programs = programs();
        Path folder = Files.createTempDirectory("ohmstead-pg");
        give(folder);
        int port;
        try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            port = free.getLocalPort();
        }
        PostgresServer server = new PostgresServer(programs, folder, port, List.of(settings));
        Runtime.getRuntime().addShutdownHook(new Thread(server::kill));
        server.initialise();
        server.startAgain();
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
        found = found.or(() -> Stream.of(
                        System.getenv().getOrDefault("PATH", "").split(":"))
                .map(Path::of)
                .filter(bin -> Files.isExecutable(bin.resolve("initdb")) && Files.isExecutable(bin.resolve("postgres")))
                .findFirst());
        if (found.isEmpty()) {
            boolean couldBeInstalled = System.getenv("CI") != null || isRoot() && Files.exists(PACKAGES);
            String missing = "There is no PostgreSQL server on this machine (Debian: apt-get install postgresql).";
            Assertions.assertFalse(couldBeInstalled, missing + " product/ohmstead test brings it.");
            Assumptions.abort(missing + " Without it the shared log is not tested.");
        }
        return found.get();
    }

    private static boolean isRoot() {
        return "root".equals(System.getProperty("user.name"));
    }

    /** Lets the server's user have a file or folder. */
    private static void give(Path path) throws IOException {
        if (isRoot()) {
            try {
                Files.setOwner(
                        path,
                        path.getFileSystem().getUserPrincipalLookupService().lookupPrincipalByName(SERVER_USER));
            } catch (UserPrincipalNotFoundException missing) {
                Assertions.fail(
                        "PostgreSQL refuses to run as root, and there is no user " + SERVER_USER + ".", missing);
            }
        }
    }

    private List<String> asServerUser(String program, String... arguments) {
        List<String> words = new ArrayList<>();
        if (isRoot()) {
            words.addAll(List.of("runuser", "-u", SERVER_USER, "--"));
        }
        words.add(programs.resolve(program).toString());
        words.addAll(List.of(arguments));
        return words;
    }

    private Path data() {
        return folder.resolve("data");
    }

    private void initialise() throws IOException, InterruptedException {
        Path password = Files.writeString(file("password"), PASSWORD);
        give(password);
        Path log = folder.resolve("initdb.log");
        Process initdb = new ProcessBuilder(asServerUser(
                        "initdb",
                        "-D",
                        data().toString(),
                        "-U",
                        OWNER,
                        "-A",
                        "scram-sha-256",
                        "--pwfile",
                        password.toString(),
                        "-E",
                        "UTF8",
                        "--locale=C",
                        "--no-sync",
                        "--no-instructions"))
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        boolean ended = initdb.waitFor(START_SECONDS, TimeUnit.SECONDS);
        Assertions.assertTrue(ended && initdb.exitValue() == 0, () -> "initdb failed: " + text(log));
    }

    private Path file(String name) throws IOException {
        Path file = folder.resolve(name);
        Files.createFile(file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        return file;
    }

    private static String text(Path file) {
        try {
            return Files.exists(file) ? Files.readString(file) : "(no output)";
        } catch (IOException failure) {
            return failure.toString();
        }
    }

    /** Puts files where the server finds them under their names, for it alone to read. */
    void install(Path... files) throws IOException {
        for (Path file : files) {
            Path copy = data().resolve(file.getFileName());
            Files.copy(file, copy);
            Files.setPosixFilePermissions(copy, PosixFilePermissions.fromString("rw-------"));
            give(copy);
        }
    }

    int port() {
        return port;
    }

    /** Starts the server, again after it was killed; returns when it lets users in. */
    void startAgain() throws IOException, InterruptedException {
        Path log = folder.resolve("server.log");
        List<String> words = asServerUser(
                "postgres",
                "-D",
                data().toString(),
                "-p",
                Integer.toString(port),
                "-c",
                "listen_addresses=127.0.0.1",
                "-c",
                "unix_socket_directories=" + folder,
                "-c",
                "max_connections=60",
                "-c",
                "shared_buffers=16MB",
                "-c",
                "log_min_messages=fatal");
        for (String setting : settings) {
            words.addAll(List.of("-c", setting));
        }
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(START_SECONDS);
        while (true) {
            if (process == null || !process.isAlive()) {
                // After a kill the old one's children may still hold its memory; then the new one ends at once.
                process = new ProcessBuilder(words)
                        .directory(folder.toFile())
                        .redirectErrorStream(true)
                        .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()))
                        .start();
            }
            try (Connection connection = owner("postgres")) {
                Assertions.assertTrue(connection.isValid(START_SECONDS));
                return;
            } catch (SQLException notYet) {
                Assertions.assertTrue(System.nanoTime() < end, () -> "the server did not start: " + text(log));
                LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(50));
            }
        }
    }

    /** Kills the server's main process as a crash would; its children follow by themselves. */
    void kill() {
        Path file = data().resolve("postmaster.pid");
        try {
            if (process != null && process.isAlive() && Files.exists(file)) {
                long pid = Long.parseLong(Files.readAllLines(file).get(0).strip());
                ProcessHandle.of(pid).ifPresent(ProcessHandle::destroyForcibly);
                process.waitFor(START_SECONDS, TimeUnit.SECONDS);
            }
        } catch (IOException failure) {
            throw new IllegalStateException(failure);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    /** Connects as the owner, who may do everything. */
    Connection owner(String database) throws SQLException {
        PGSimpleDataSource source = new PGSimpleDataSource();
        source.setServerNames(new String[] {"127.0.0.1"});
        source.setPortNumbers(new int[] {port});
        source.setDatabaseName(database);
        source.setUser(OWNER);
        source.setPassword(PASSWORD);
        source.setConnectTimeout(5);
        source.setSocketTimeout(START_SECONDS);
        return source.getConnection();
    }

    /** Runs statements as the owner. */
    void execute(String database, String... statements) throws SQLException {
        try (Connection connection = owner(database);
                Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    /** Makes an empty database; returns its name. */
    String database() throws SQLException {
        String name = "lab " + DATABASES.incrementAndGet();
        execute("postgres", "CREATE DATABASE \"" + name + "\"");
        return name;
    }

    /** Makes a database with a shared log: a copy of the first, which is prepared as any is. */
    LabAddress prepared() throws SQLException, SharedLabException {
        if (template.isEmpty()) {
            template = database();
            SharedLab.prepare(address(template), credentials(), LabTimeouts.USUAL);
        }
        String name = "lab " + DATABASES.incrementAndGet();
        execute("postgres", "CREATE DATABASE \"" + name + "\" TEMPLATE \"" + template + "\"");
        return address(name);
    }

    LabAddress address(String database) {
        return new LabAddress("127.0.0.1", port, database, Optional.empty());
    }

    static LabCredentials credentials() {
        return credentials(OWNER);
    }

    /** Returns the credentials of a login; all have the same password. */
    static LabCredentials credentials(String user) {
        return new LabCredentials(user, Optional.of(PASSWORD), "the test");
    }

    /** Makes a login without any role, unless there is one. */
    void login(String name) throws SQLException {
        execute(
                "postgres",
                "DO $$ BEGIN IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = '" + name + "') THEN CREATE ROLE \""
                        + name + "\" LOGIN PASSWORD '" + PASSWORD + "'; END IF; END $$");
    }

    @Override
    public void close() throws IOException {
        kill();
        Files.walkFileTree(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.deleteIfExists(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException gone) {
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path visited, IOException failure) throws IOException {
                Files.deleteIfExists(visited);
                return FileVisitResult.CONTINUE;
            }
        });
    }
}
