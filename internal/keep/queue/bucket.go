package queue

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"net/url"
	"path"
	"strings"

	"github.com/minio/minio-go/v7"
	"github.com/minio/minio-go/v7/pkg/credentials"
)

// Bucket keeps files in a bucket of an object store that speaks S3.
type Bucket struct {
	client       *minio.Client
	name, prefix string
}

// OpenFiles opens the place that a user names: a folder, or a bucket as
// https://HOST/BUCKET/PREFIX. Who signs in to it is read from the environment
// (AWS_ACCESS_KEY_ID, AWS_SECRET_ACCESS_KEY), so that no secret stands on a command line.
// Transport is nil for the usual one.
func OpenFiles(place string, transport http.RoundTripper) (Files, error) {
	scheme, _, ok := strings.Cut(place, "://")
	if !ok {
		return Folder(place), nil
	}
	u, err := url.Parse(place)
	if err != nil || u.Host == "" || u.User != nil || scheme != "https" && scheme != "http" {
		return nil, errors.New("files: write a folder, or https://HOST/BUCKET for a bucket that speaks S3; its keys come from AWS_ACCESS_KEY_ID and AWS_SECRET_ACCESS_KEY")
	}
	bucket, prefix, _ := strings.Cut(strings.Trim(u.Path, "/"), "/")
	if bucket == "" {
		return nil, fmt.Errorf("files: %s names no bucket: write https://%s/BUCKET", place, u.Host)
	}
	c, err := minio.New(u.Host, &minio.Options{
		Creds: credentials.NewEnvAWS(), Secure: scheme == "https", BucketLookup: minio.BucketLookupPath, Region: "us-east-1", Transport: transport,
	})
	if err != nil {
		return nil, fmt.Errorf("files: %w", err)
	}
	return Bucket{c, bucket, prefix}, nil
}

// Put keeps bytes.
func (b Bucket) Put(ctx context.Context, data []byte) (Name, error) {
	n := nameOf(data)
	_, err := b.client.PutObject(ctx, b.name, path.Join(b.prefix, string(n)), bytes.NewReader(data), int64(len(data)), minio.PutObjectOptions{})
	if err != nil {
		err = fmt.Errorf("bucket %s: %w", b.name, err)
	}
	return n, err
}

// Get returns what was kept.
func (b Bucket) Get(ctx context.Context, n Name) ([]byte, error) {
	o, err := b.client.GetObject(ctx, b.name, path.Join(b.prefix, string(n)), minio.GetObjectOptions{})
	if err != nil {
		return nil, fmt.Errorf("bucket %s: %w", b.name, err)
	}
	defer o.Close()
	data, err := io.ReadAll(o)
	switch {
	case minio.ToErrorResponse(err).Code == minio.NoSuchKey:
		return nil, fmt.Errorf("bucket %s: %w", b.name, ErrGone)
	case err != nil:
		return nil, fmt.Errorf("bucket %s: %w", b.name, err)
	}
	return data, n.check(data)
}
